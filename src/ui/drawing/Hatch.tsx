import { useId } from 'react'

interface HatchProps {
  /** Closed SVG path data, px. */
  readonly path: string
  /** What the path lies in: left, top, right, bottom. px */
  readonly box: readonly [number, number, number, number]
  readonly gapPx: number
  /** Of the lines against the level, anticlockwise. */
  readonly angleDeg: number
  readonly className: string
}

/**
 * Lines across an area, cut off at its edge; as lines and not as a pattern, so that they print as
 * such.
 */
export function Hatch({ path, box, gapPx, angleDeg, className }: HatchProps) {
  const id = useId()
  const [left, top, right, bottom] = box
  const [x, y] = [(left + right) / 2, (top + bottom) / 2]
  const reach = Math.hypot(right - left, bottom - top) / 2
  const turn = (-angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let lines = ''
  for (let off = gapPx / 2 - Math.ceil(reach / gapPx) * gapPx; off < reach; off += gapPx) {
    const [cx, cy] = [x - off * sin, y + off * cos]
    lines +=
      `M${tenth(cx - reach * cos)} ${tenth(cy - reach * sin)}` +
      `L${tenth(cx + reach * cos)} ${tenth(cy + reach * sin)}`
  }
  return (
    <g>
      <clipPath id={id}>
        <path d={path} clipRule="evenodd" />
      </clipPath>
      <path className={className} d={lines} clipPath={`url(#${id})`} />
    </g>
  )
}

const tenth = (value: number): number => Math.round(value * 10) / 10
