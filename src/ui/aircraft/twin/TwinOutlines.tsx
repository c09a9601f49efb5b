import { useRef } from 'react'
import { outlinePath } from '../../../core/aircraft/twin/outlineSvg.ts'
import type { TwinEntry } from '../../../core/aircraft/report/types.ts'
import type { PartShape } from '../../../state/store/types.ts'
import { useWidth } from '../../fields/useWidth.ts'
import { showNumber, showSide } from '../../show.ts'
import { lengthUnit } from '../../../core/words/shownUnits.ts'
import { pieceMass } from '../words.ts'

interface TwinOutlinesProps {
  readonly parts: readonly TwinEntry[]
  readonly shapes: ReadonlyMap<string, PartShape>
}

/** The largest of them takes no more than this. px */
const MOST_WIDE_PX = 340
const MOST_HIGH_PX = 240
/** What the line needs round the outline. px */
const LINE_PX = 2

/** What would be cut: the outline of each flat part, all at one scale, with its size. */
export function TwinOutlines({ parts, shapes }: TwinOutlinesProps) {
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place, MOST_WIDE_PX)
  const cut = parts.flatMap(({ partId, name, quantity, twin }) => {
    const outline = shapes.get(partId)?.outline ?? null
    if (twin === null || outline === null) return []
    const [left, bottom] = outline.minMm
    const [right, top] = outline.maxMm
    return [{ partId, name, quantity, twin, outline, wideMm: right - left, highMm: top - bottom }]
  })
  if (cut.length === 0) return null
  const widest = Math.max(...cut.map(({ wideMm }) => wideMm), 1e-6)
  const highest = Math.max(...cut.map(({ highMm }) => highMm), 1e-6)
  const pxPerMm = Math.min(Math.min(width - 8, MOST_WIDE_PX) / widest, MOST_HIGH_PX / highest)
  return (
    <div className="outlines" ref={place}>
      {cut.map(({ partId, name, quantity, twin, outline, wideMm, highMm }) => {
        const [wide, high] = [wideMm * pxPerMm + 2 * LINE_PX, highMm * pxPerMm + 2 * LINE_PX]
        const sides = `${showSide(wideMm)} × ${showSide(highMm)} ${lengthUnit()}`
        const plate = `${showNumber(twin.chosen.thicknessMm, 2)} mm plate`
        return (
          <figure key={partId} className="outline">
            <svg
              width={wide}
              height={high}
              viewBox={`0 0 ${wide} ${high}`}
              role="img"
              aria-label={`Cut outline of ${name}, ${sides}`}
            >
              <path
                className="outline-cut"
                transform={`translate(${LINE_PX} ${LINE_PX}) scale(${pxPerMm})`}
                d={outlinePath(outline, 2)}
              />
            </svg>
            <figcaption>
              <b>
                {name}
                {quantity === 1 ? '' : ` × ${quantity}`}
              </b>
              <span>
                {sides}, {plate}, {pieceMass(twin.chosen.massG.mid)}
              </span>
            </figcaption>
          </figure>
        )
      })}
    </div>
  )
}
