import '../styles/section.css'
import { useMemo, useRef } from 'react'
import { ringPoints } from '../../core/aircraft/balance/places.ts'
import { onSheet } from '../../core/drawing/onSheet.ts'
import type { Dimension } from '../../core/drawing/overallSizes.ts'
import type { LineDrawing } from '../../core/drawing/types.ts'
import { VIEWS } from '../../core/drawing/viewAxes.ts'
import { useAppState } from '../appContext.ts'
import { useMedia } from '../fields/useMedia.ts'
import { useWidth } from '../fields/useWidth.ts'
import { showLength } from '../show.ts'
import { useFramePlaces } from '../useFramePlaces.ts'
import { DimensionLines } from './DimensionLines.tsx'
import { PieceLines } from './PieceLines.tsx'
import { useDrawing } from './useDrawing.ts'

/** Where list and drawing share a narrow sheet; the same as in the style sheets. */
const NARROW = '(64rem <= width < 80rem)'
/** A list of more lines is higher than the drawing beside it. */
const LINES = 8
const MARGIN_PX = 56

/** The frame from above under its slant view, where the list beside it leaves room for it. */
export function PlanBelow() {
  const isNarrow = useMedia(NARROW)
  const isLong = useAppState(({ frame }) => frame.parts.length > LINES)
  const { places } = useFramePlaces()
  return isNarrow && isLong && places.length > 0 ? <Plan /> : null
}

function Plan() {
  const parts = useAppState(({ frame }) => frame.parts)
  const { wing, flight } = useAppState(({ frame }) => frame.aircraft)
  const placed = useFramePlaces()
  const place = useRef<HTMLElement>(null)
  const widthPx = Math.round(useWidth(place, 480))
  const heightPx = Math.round(0.72 * widthPx)
  const ring = wing === null ? flight : null
  const radiusMm = ring?.motorRadiusMm ?? 0
  const wanted = useMemo(
    () => ({
      view: VIEWS.top,
      widthPx,
      heightPx,
      marginPx: MARGIN_PX,
      apart: 0,
      isMoving: false,
      placedOnly: true,
      // The circle is round the aircraft's middle, which need not be that of what is drawn.
      ...(radiusMm > 0 ? { scale: (0.42 * heightPx) / radiusMm } : {}),
    }),
    [widthPx, heightPx, radiusMm],
  )
  const { drawing } = useDrawing(wanted, parts, placed)
  const span = drawing === null ? null : spanOf(drawing)
  return (
    <figure className="plan-below screen-only" ref={place}>
      <svg
        viewBox={`0 0 ${widthPx} ${heightPx}`}
        role="img"
        aria-label={
          'The frame from above' +
          (span === null ? '' : `, ${showLength(span.lengthMm, 0)} across`) +
          (radiusMm > 0 ? `, motors on a circle of ${showLength(2 * radiusMm, 0)}` : '')
        }
      >
        {drawing?.items.map((item) => (
          <PieceLines key={item.item} item={item} isLit={false} />
        ))}
        {drawing === null || ring === null || radiusMm === 0 ? null : (
          <MotorCircle drawing={drawing} motors={ring.motors} radiusMm={radiusMm} />
        )}
        {span === null ? null : <DimensionLines of={[span]} />}
      </svg>
    </figure>
  )
}

interface MotorCircleProps {
  readonly drawing: LineDrawing
  readonly motors: number
  readonly radiusMm: number
}

function MotorCircle({ drawing, motors, radiusMm }: MotorCircleProps) {
  const [x, y] = onSheet(drawing, [0, 0, 0])
  const r = radiusMm * drawing.scale
  const firstDeg = 180 / motors
  const spots = ringPoints({ count: motors, radiusMm, firstDeg, positionMm: [0, 0, 0] })
  // Between two motors, where nothing stands on the circle.
  const turn = Math.PI / 3
  const [lx, ly] = [x + r * Math.cos(turn), y + r * Math.sin(turn)]
  return (
    <g className="motor-circle" aria-hidden="true">
      <circle cx={x} cy={y} r={r} />
      {spots.map((spot) => {
        const [mx, my] = onSheet(drawing, spot)
        return <path key={spot.join()} d={`M${mx - 7} ${my}h14M${mx} ${my - 7}v14`} />
      })}
      <path d={`M${lx} ${ly}l12 14h14`} />
      <text x={lx + 30} y={ly + 18}>
        Ø {showLength(2 * radiusMm, 0)}
      </text>
    </g>
  )
}

/** The whole width across, dimensioned left of what is drawn. */
function spanOf({ boxPx: [left, top, , bottom], scale }: LineDrawing): Dimension {
  const x = left - 28
  const end = x - 5
  return {
    axis: 'y',
    lengthMm: (bottom - top) / scale,
    from: { x, y: top },
    to: { x, y: bottom },
    extensions: [
      [
        { x: left - 4, y: top },
        { x: end, y: top },
      ],
      [
        { x: left - 4, y: bottom },
        { x: end, y: bottom },
      ],
    ],
    figure: { x: x - 6, y: (top + bottom) / 2, angleDeg: -90 },
  }
}
