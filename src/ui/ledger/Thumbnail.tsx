import { useEffect, useRef } from 'react'
import type { Thumbnail as Picture } from '../../state/store/types.ts'

/** The small picture the worker drew; an empty square until it is there. */
export function Thumbnail({ picture }: { readonly picture: Picture | null }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const context = canvas.current?.getContext('2d')
    if (picture === null || context === null || context === undefined) return
    const pixels = new ImageData(new Uint8ClampedArray(picture.rgba), picture.sizePx)
    context.putImageData(pixels, 0, 0)
  }, [picture])
  const sizePx = picture?.sizePx ?? 96
  return (
    <canvas ref={canvas} className="thumbnail" width={sizePx} height={sizePx} aria-hidden="true" />
  )
}
