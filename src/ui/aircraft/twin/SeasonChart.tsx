import { useRef } from 'react'
import { scaleLinear } from 'd3-scale'
import { formatMoney } from '../../../core/words/format.ts'
import type { SeasonReport } from '../../../core/aircraft/report/types.ts'
import type { SeasonSide } from '../../../core/aircraft/season/side.ts'
import type { Part } from '../../../core/model/frame.ts'
import type { Range } from '../../../core/model/figures.ts'
import { SaveDrawing } from '../../drawing/SaveDrawing.tsx'
import { useChartWidth } from '../../fields/useChartWidth.ts'
import { SEASON_TABLES } from './seasonTwin.ts'
import { figureWords, moneySpan, spanWords } from '../words.ts'

interface SeasonChartProps {
  readonly season: SeasonReport
  readonly parts: readonly Part[]
  readonly currency: string
}

const FIRST_WIDTH = 360
const NAME_PX = 108
const FIGURE_PX = 118
const ROW_PX = 34
const HEAD_PX = 26
const BOX_PX = 11
/** A longer row of spares is told by its figure alone. */
const MOST_BOXES = 24

interface Bar {
  readonly name: string
  readonly isPrinted: boolean
  readonly range: Range
  readonly figure: string
  /** Empty where it is one with the figure. */
  readonly span: string
}

/**
 * A season as a picture: what it costs and how long it grounds on either frame, and the spares it
 * wants.
 */
export function SeasonChart({ season, parts, currency }: SeasonChartProps) {
  const place = useRef<HTMLElement>(null)
  const width = useChartWidth(place, FIRST_WIDTH)
  const { printed, carbon, carbonFrame } = season
  if (printed.lines.length === 0) return null
  const sides = [
    { name: 'printed', isPrinted: true, side: printed },
    ...(carbon === null
      ? []
      : [
          {
            name: carbonFrame === 'bought' ? 'bought carbon' : 'cut plate',
            isPrinted: false,
            side: carbon,
          },
        ]),
  ]
  const bars = (
    range: (side: SeasonSide) => Range,
    figure: (range: Range) => readonly [string, string | null],
  ) =>
    sides.map(({ name, isPrinted, side }): Bar => {
      const own = range(side)
      const [middle, span] = figure(own)
      return { name, isPrinted, range: own, figure: middle, span: span ?? '' }
    })
  const money = bars(
    ({ cost }) => cost,
    (cost) => [formatMoney(cost.mid, currency), moneySpan(cost, currency)],
  )
  const days = bars(
    ({ groundedDays }) => groundedDays,
    (grounded) => [`${figureWords(grounded.mid, 1)} days`, spanWords(grounded, 'days', 1)],
  )
  const spares = printed.lines.filter(({ sparesWanted, breaks }) => sparesWanted > 0 || breaks > 0)
  const groupPx = HEAD_PX + ROW_PX * sides.length
  const height = 2 * groupPx + HEAD_PX + 22 * spares.length + 6
  const words = [...money, ...days].map(
    ({ name, figure, span }) => `${name} ${figure}${span === '' ? '' : ` (${span})`}`,
  )
  return (
    <figure ref={place} className="craft-figure-block chart season-chart">
      <figcaption>
        The season in one picture; bands hold nine seasons in ten
        <SaveDrawing of={place} name="season" />
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-details={SEASON_TABLES}
        aria-label={`A season: ${words.join('; ')}. The tables below say the same, with the spares wanted.`}
      >
        <BarGroup title="Money, frame and spares included" bars={money} top={0} width={width} />
        <BarGroup title="Days grounded" bars={days} top={groupPx} width={width} />
        <text className="season-title" x="0" y={2 * groupPx + 14}>
          Spares: filled are in the bag, open ones are still to print
        </text>
        {spares.map(({ partId, name, sparesWanted }, i) => {
          const there = parts.find(({ id }) => id === partId)?.spares ?? 0
          const y = 2 * groupPx + HEAD_PX + 22 * i
          const count = Math.max(there, sparesWanted)
          const room = Math.floor((width - NAME_PX - FIGURE_PX) / (BOX_PX + 3))
          const boxes = Math.min(count, MOST_BOXES, Math.max(1, room))
          return (
            <g key={partId}>
              <text className="season-name" x="0" y={y + 11}>
                {shortened(name)}
              </text>
              {Array.from({ length: boxes }, (_, k) => (
                <rect
                  key={k}
                  className={k < there ? 'season-box season-box-there' : 'season-box'}
                  x={NAME_PX + k * (BOX_PX + 3)}
                  y={y + 1}
                  width={BOX_PX}
                  height={BOX_PX}
                />
              ))}
              <text className="season-figure" x={width} y={y + 11}>
                {there} of {sparesWanted} wanted
              </text>
            </g>
          )
        })}
      </svg>
    </figure>
  )
}

interface BarGroupProps {
  readonly title: string
  readonly bars: readonly Bar[]
  readonly top: number
  readonly width: number
}

function BarGroup({ title, bars, top, width }: BarGroupProps) {
  const end = Math.max(...bars.map(({ range }) => range.high), 1e-9)
  const x = scaleLinear([0, end], [NAME_PX, width - FIGURE_PX - 10])
  return (
    <g>
      <text className="season-title" x="0" y={top + 14}>
        {title}
      </text>
      {bars.map(({ name, isPrinted, range, figure, span }, i) => {
        const y = top + HEAD_PX + ROW_PX * i
        const middle = y + 8
        const reach = `M${x(range.low)} ${middle - 5}v10m0 -5H${x(range.high)}m0 -5v10`
        return (
          <g key={name}>
            <text className="season-name" x="0" y={y + 12}>
              {name}
            </text>
            <rect
              className={isPrinted ? 'season-bar' : 'season-bar season-bar-carbon'}
              x={NAME_PX}
              y={y}
              width={Math.max(1, x(range.mid) - NAME_PX)}
              height="16"
            />
            <path className="season-reach-ground" d={reach} />
            <path className="season-reach" d={reach} />
            <text className="season-figure" x={width} y={y + 8}>
              {figure}
            </text>
            <text className="season-span" x={width} y={y + 22}>
              {span}
            </text>
          </g>
        )
      })}
    </g>
  )
}

/** What fits before the bars. */
function shortened(name: string): string {
  return name.length > 17 ? `${name.slice(0, 16)}…` : name
}
