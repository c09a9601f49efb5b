import { scaleLinear } from 'd3-scale'
import type { StrictestLimit } from '../../core/frame/types.ts'
import type { Range } from '../../core/model/figures.ts'

interface GramRulerProps {
  readonly massG: Range
  readonly carbonG: number | null
  /** The limit that binds, in grams of printed parts; null for none. */
  readonly limit?: StrictestLimit | null
}

/** Viewbox units; the drawing is stretched to the width of the page, its strokes are not. */
const WIDTH = 1000
/** Beyond this share of the ruler a name stands on the left of its mark. */
const FLIP = 0.7

/** The frame's mass on a ruler: a needle at the middle figure, a band for the range, a mark where the carbon frame lies. */
export function GramRuler({ massG, carbonG, limit = null }: GramRulerProps) {
  // An all-up limit that what is bought uses up leaves nothing on this scale: its end.
  const limitG = limit === null ? null : Math.max(0, limit.printedG)
  const end = massG.high === 0 ? 200 : Math.max(massG.high, carbonG ?? 0, limitG ?? 0) * 1.12
  const scale = scaleLinear([0, end], [0, WIDTH]).nice(10)
  const [, top] = scale.domain() as [number, number]
  const major = scale.ticks(8)
  const minor = scale.ticks(40)
  const percent = (value: number) => `${(value / top) * 100}%`
  return (
    <div className="ruler" aria-hidden="true">
      <svg viewBox={`0 0 ${WIDTH} 20`} preserveAspectRatio="none">
        <rect
          className="ruler-band"
          x={scale(massG.low)}
          y="0"
          width={Math.max(1, scale(massG.high) - scale(massG.low))}
          height="20"
        />
        {minor.map((tick) => (
          <line
            key={tick}
            className="ruler-tick"
            x1={scale(tick)}
            x2={scale(tick)}
            y1="14"
            y2="20"
          />
        ))}
        {major.map((tick) => (
          <line
            key={tick}
            className="ruler-tick ruler-major"
            x1={scale(tick)}
            x2={scale(tick)}
            y1="9"
            y2="20"
          />
        ))}
        <line
          className={limit !== null && limit.leftG < 0 ? 'ruler-needle ruler-over' : 'ruler-needle'}
          x1={scale(massG.mid)}
          x2={scale(massG.mid)}
          y1="0"
          y2="20"
        />
      </svg>
      {carbonG === null ? null : (
        <span className="ruler-carbon" style={{ left: percent(carbonG) }}>
          carbon
        </span>
      )}
      {limit === null || limitG === null ? null : (
        <span
          className={limitG > FLIP * top ? 'ruler-limit ruler-limit-left' : 'ruler-limit'}
          style={{ left: percent(limitG) }}
        >
          {carbonG !== null && limitG > FLIP * top && carbonG > 0.4 * top
            ? ''
            : `${limit.kind === 'printed' ? 'printed' : 'all-up'} limit`}
        </span>
      )}
      <div className="ruler-numbers">
        {major.map((tick) => (
          <span key={tick} style={{ left: percent(tick) }}>
            {tick}
          </span>
        ))}
      </div>
    </div>
  )
}
