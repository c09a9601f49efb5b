import type { RefObject } from 'react'
import { useReadState } from '../appContext.ts'
import { PlainButton } from '../fields/PlainButton.tsx'
import { download } from '../head/download.ts'
import { pngOf, svgOf } from './exportSvg.ts'

interface SaveDrawingProps {
  /** What holds the drawing. */
  readonly of: RefObject<Element | null>
  /** For the file's name, after the frame's. */
  readonly name: string
}

/** Takes a drawing or a chart along, as lines or as a picture. */
export function SaveDrawing({ of, name }: SaveDrawingProps) {
  const readState = useReadState()
  const save = async (ending: '.svg' | '.png') => {
    const svg = of.current?.querySelector('svg') ?? null
    if (svg === null) return
    const text = svgOf(svg)
    const file = ending === '.svg' ? new Blob([text], { type: 'image/svg+xml' }) : await pngOf(text)
    download(file, `${readState().frame.name} ${name}`, ending)
  }
  return (
    <span className="save-drawing">
      <PlainButton
        className="quiet"
        aria-label={`Save ${name} as SVG`}
        onPress={() => void save('.svg')}
      >
        SVG
      </PlainButton>
      <PlainButton
        className="quiet"
        aria-label={`Save ${name} as PNG`}
        onPress={() => void save('.png')}
      >
        PNG
      </PlainButton>
    </span>
  )
}
