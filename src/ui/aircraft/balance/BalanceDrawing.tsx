import { useId, useRef } from 'react'
import { scaleLinear, scaleSqrt } from 'd3-scale'
import type { FlightSetup } from '../../../core/model/aircraft.ts'
import type { FrameBalance } from '../../../core/aircraft/balance/frameBalance.ts'
import { ringPoints } from '../../../core/aircraft/balance/places.ts'
import { VIEWS } from '../../../core/drawing/viewAxes.ts'
import type { Vec3 } from '../../../core/model/mesh.ts'
import { FrameLines } from '../../drawing/FrameLines.tsx'
import { ScaleBar } from '../../drawing/ScaleBar.tsx'
import { SaveDrawing } from '../../drawing/SaveDrawing.tsx'
import { useWidth } from '../../fields/useWidth.ts'
import { showLength } from '../../show.ts'
import { MassTable } from './MassTable.tsx'
import { nameMasses } from './nameMasses.ts'

interface BalanceDrawingProps {
  readonly balance: FrameBalance
  /** Null for a plane: no motor circle is drawn then. */
  readonly flight: FlightSetup | null
}

type Point = readonly [x: number, y: number]

/** Widths a view may have, px; of the first picture, before its room is measured. */
const WIDTH = { least: 280, first: 560, most: 736 } as const
const MARGIN = 26
/** Of the heaviest mass's circle, of the width. */
const MOST_R = 0.04

/**
 * Side view above plan, nose left (first angle): the parts in outline, every mass as a circle; both
 * to one scale.
 */
export function BalanceDrawing({ balance, flight }: BalanceDrawingProps) {
  const motors =
    flight === null
      ? []
      : ringPoints({
          count: flight.motors,
          radiusMm: flight.motorRadiusMm,
          firstDeg: 180 / flight.motors,
          positionMm: [0, 0, 0],
        })
  const propMm = flight === null ? 0 : flight.propDiameterMm / 2
  const all = [...balance.placed.map(({ centreMm }) => centreMm), ...motors, balance.cgMm]
  const reach =
    Math.max(50, ...all.map(([x, y, z]) => Math.max(Math.abs(x), Math.abs(y), Math.abs(z)))) +
    propMm * 1.05
  const twinId = useId()
  const shared = { balance, motors, propMm, reach, twinId }
  return (
    <div className="drawings">
      <View {...shared} words="From the left, nose left" project={([x, , z]) => [-x, z]} />
      <View {...shared} words="From above, nose left" project={([x, y]) => [-x, -y]} isPlan />
      <MassTable id={twinId} balance={balance} />
    </div>
  )
}

interface ViewProps {
  readonly balance: FrameBalance
  readonly motors: readonly Vec3[]
  readonly propMm: number
  /** Half the width of the drawing, mm. */
  readonly reach: number
  /** Of the table that says the same. */
  readonly twinId: string
  readonly words: string
  /** Right and up on paper. */
  readonly project: (point: Vec3) => Point
  readonly isPlan?: boolean
}

function View(props: ViewProps) {
  const { balance, motors, propMm, reach, twinId, words, project, isPlan = false } = props
  const figure = useRef<HTMLElement>(null)
  // Words keep their size on a phone: the view is as wide as it is shown.
  const room = useWidth(figure, WIDTH.first)
  const size = Math.round(Math.min(WIDTH.most, Math.max(WIDTH.least, room)))
  const height = isPlan ? size : Math.round(size * 0.45)
  const across = scaleLinear([-reach, reach], [MARGIN, size - MARGIN])
  const pxPerMm = (size - 2 * MARGIN) / (2 * reach)
  const at = (point: Vec3): Point => {
    const [right, up] = project(point)
    return [across(right), height / 2 - up * pxPerMm]
  }
  const most = Math.max(...balance.placed.map(({ massG }) => massG))
  const radius = scaleSqrt([0, most], [0, MOST_R * size])
  const [cx, cy] = at(balance.cgMm)
  const [ox, oy] = at([0, 0, 0])
  const drawn = balance.placed.map(({ id, name, massG, centreMm }, index) => {
    const [x, y] = at(centreMm)
    // Two pieces may share a place, and nothing here moves but by being drawn anew.
    return { key: `${id} ${index}`, name, massG, x, y, radius: radius(massG) }
  })
  const sheet = { widthPx: size, heightPx: height, mark: { x: cx, y: cy } }
  return (
    <figure ref={figure}>
      <svg
        viewBox={`0 0 ${size} ${height}`}
        role="img"
        aria-label={`${words}: ${cgWords(balance)}`}
        aria-details={twinId}
      >
        <FrameLines
          view={isPlan ? VIEWS.top : VIEWS.side}
          widthPx={size}
          heightPx={height}
          scale={pxPerMm}
        />
        <line className="draw-axis" x1={0} x2={size} y1={oy} y2={oy} />
        <line className="draw-axis" x1={ox} x2={ox} y1={0} y2={height} />
        {motors.map((motor) => {
          const [x, y] = at(motor)
          return isPlan ? (
            <circle key={motor.join()} className="draw-prop" cx={x} cy={y} r={propMm * pxPerMm} />
          ) : (
            <line
              key={motor.join()}
              className="draw-prop"
              x1={x - propMm * pxPerMm}
              x2={x + propMm * pxPerMm}
              y1={y}
              y2={y}
            />
          )
        })}
        {drawn.map(({ key, x, y, radius: r }) => (
          <circle key={key} className="draw-mass" cx={x} cy={y} r={r} />
        ))}
        {isPlan
          ? nameMasses(drawn, sheet).map(({ name, x, y }) => (
              <text
                key={name}
                className="draw-name"
                x={x}
                y={y}
                textAnchor="middle"
                dominantBaseline="middle"
              >
                {name}
              </text>
            ))
          : null}
        <line className="draw-projection" x1={cx} x2={cx} y1={0} y2={height} />
        <circle className="draw-cg" cx={cx} cy={cy} r={7} />
        <path
          className="draw-cg-quarter"
          d={`M${cx} ${cy}h7a7 7 0 0 0 -7 -7zM${cx} ${cy}h-7a7 7 0 0 0 7 7z`}
        />
        <ScaleBar pxPerMm={pxPerMm} widthPx={size} xPx={8} yPx={height - 8} />
      </svg>
      <figcaption>
        {words} <SaveDrawing of={figure} name={isPlan ? 'plan' : 'side'} />
      </figcaption>
    </figure>
  )
}

/** Each to its own side, as the list below has it. */
function cgWords({ cgMm: [x, y, z] }: FrameBalance): string {
  const sides = [
    `${showLength(Math.abs(x), 1)} ${x < 0 ? 'aft' : 'forward'}`,
    `${showLength(Math.abs(y), 1)} ${y < 0 ? 'right' : 'left'}`,
    `${showLength(Math.abs(z), 1)} ${z < 0 ? 'down' : 'up'}`,
  ]
  return `centre of gravity ${sides.join(', ')}`
}
