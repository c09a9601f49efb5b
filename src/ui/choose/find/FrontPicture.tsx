import { useRef, useState } from 'react'
import { scaleLinear } from 'd3-scale'
import { formatGrams, formatMoney } from '../../../core/words/format.ts'
import { massUnit } from '../../../core/words/shownUnits.ts'
import { SaveDrawing } from '../../drawing/SaveDrawing.tsx'
import { Choice } from '../../fields/Choice.tsx'
import { useChartWidth } from '../../fields/useChartWidth.ts'
import { showGhost } from '../../head/ghost.ts'
import { showMass, showNumber, showTime } from '../../show.ts'
import type { FrameThen } from '../chosenParts.ts'
import type { Solution } from './searchFrame.ts'

type Against = 'stiffness' | 'hours' | 'cost'

const AGAINST = [
  { id: 'stiffness', name: 'Stiffness kept, %' },
  { id: 'hours', name: 'Hours' },
  { id: 'cost', name: 'Cost' },
] as const satisfies readonly { readonly id: Against; readonly name: string }[]

interface FrontPictureProps {
  readonly solutions: readonly Solution[]
  readonly then: FrameThen
  readonly looked: Solution | null
  readonly onLook: (solution: Solution) => void
}

const HEIGHT_PX = 300
const LEFT_PX = 48
const BOTTOM_PX = 40

/**
 * Solutions over grams; the frame as it stood is the filled mark. The table beside it holds the
 * same figures.
 */
export function FrontPicture({ solutions, then, looked, onLook }: FrontPictureProps) {
  const place = useRef<HTMLElement>(null)
  const width = Math.max(240, Math.round(useChartWidth(place, 480)))
  const [wanted, setWanted] = useState<Against>('stiffness')
  const isStiff = solutions.some(({ assignment }) => assignment.stiffness !== Infinity)
  const against = wanted === 'stiffness' && !isStiff ? 'hours' : wanted
  const { currency } = then.frame.prices
  const valueOf = ({ assignment, sum }: Pick<Solution, 'assignment' | 'sum'>): number => {
    if (against === 'hours') return sum.withSpares.timeS.mid / 3600
    if (against === 'cost') return sum.withSpares.cost.mid
    return assignment.stiffness === Infinity ? 100 : 100 * assignment.stiffness
  }
  const words = (value: number): string => {
    if (against === 'hours') return showTime({ low: 0, mid: 3600 * value, high: 0 }).mid
    return against === 'cost' ? formatMoney(value, currency) : `${showNumber(value, 0)} %`
  }
  const now = nowOf(then, against)
  const masses = [...solutions.map(({ sum }) => sum.printed.massG.mid), then.printedG]
  const values = [...solutions.map(valueOf), now]
  const x = scaleLinear(
    [Math.min(...masses), Math.max(...masses)],
    [LEFT_PX + 12, width - 16],
  ).nice()
  const y = scaleLinear(
    [Math.min(...values), Math.max(...values)],
    [HEIGHT_PX - BOTTOM_PX - 10, 16],
  ).nice()
  const floor = HEIGHT_PX - BOTTOM_PX
  return (
    <figure ref={place} className="front-picture">
      <figcaption>
        <Choice
          label="Printed mass against"
          options={AGAINST}
          value={against}
          onChange={setWanted}
        />
        <SaveDrawing of={place} name="solutions" />
      </figcaption>
      <svg
        viewBox={`0 0 ${width} ${HEIGHT_PX}`}
        role="img"
        aria-details="front-list"
        aria-label={`${solutions.length} solutions, printed mass against ${against}; the table has their figures.`}
      >
        {y.ticks(5).map((value) => (
          <g key={value} className="chart-tick">
            <line x1={LEFT_PX} x2={width - 8} y1={y(value)} y2={y(value)} />
            <text x={LEFT_PX - 6} y={y(value)} textAnchor="end" dominantBaseline="middle">
              {against === 'cost' ? showNumber(value, 2) : words(value).replace(/\s?%$/, '')}
            </text>
          </g>
        ))}
        {x.ticks(Math.max(2, Math.floor(width / 90))).map((massG) => (
          <g key={massG} className="chart-tick">
            <line x1={x(massG)} x2={x(massG)} y1={floor} y2={floor + 5} />
            <text x={x(massG)} y={floor + 18} textAnchor="middle">
              {formatGrams(massG)}
            </text>
          </g>
        ))}
        <text className="chart-number" x={width - 8} y={HEIGHT_PX - 6} textAnchor="end">
          printed, {massUnit()}
        </text>
        {solutions.map((one) => (
          <circle
            key={one.sum.printed.massG.mid + one.assignment.timeS}
            className={one === looked ? 'curve-point front-looked' : 'curve-point'}
            cx={x(one.sum.printed.massG.mid)}
            cy={y(valueOf(one))}
            r={one === looked ? 6 : 4}
            onPointerEnter={() => {
              showGhost({ massG: one.sum.printed.massG.mid, words: 'solution' })
            }}
            onPointerLeave={() => {
              showGhost(null)
            }}
            onClick={() => {
              onLook(one)
            }}
          >
            <title>{`${showMass(one.sum.printed.massG.mid)}, ${words(valueOf(one))}`}</title>
          </circle>
        ))}
        <rect
          className="curve-now"
          x={x(then.printedG) - 4.5}
          y={y(now) - 4.5}
          width={9}
          height={9}
        >
          <title>{`as it stood: ${showMass(then.printedG)}, ${words(now)}`}</title>
        </rect>
      </svg>
      <p className="hint">The square is the frame as it stood.</p>
    </figure>
  )
}

function nowOf({ rows }: FrameThen, against: Against): number {
  if (against === 'stiffness') return 100
  return rows.reduce(
    (all, { withSpares }) =>
      all + (against === 'hours' ? withSpares.timeS.mid / 3600 : withSpares.cost.mid),
    0,
  )
}
