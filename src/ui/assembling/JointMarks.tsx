import { onSheet } from '../../core/drawing/onSheet.ts'
import type { LineDrawing } from '../../core/drawing/types.ts'
import { mapDirection, mapPoint, type RigidMap } from '../../core/mesh/rigidMaps.ts'
import type { Mouth } from '../../core/joints/types.ts'
import type { Joint } from '../../core/model/joints.ts'
import { dot, minus, plus, times } from '../../core/model/vectors.ts'

/** How far the axes of holes that meet stand out on both sides. mm */
const AXIS_MM = 14
/** Discs stand this far beside their hole. px */
const ASIDE_PX = 13

interface JointMarksProps {
  readonly drawing: LineDrawing
  readonly joint: Omit<Joint, 'id'>
  /** Where the mesh of a is. */
  readonly motion: RigidMap
}

/** The holes that meet: their axes, and one small numbered disc each. */
export function JointMarks({ drawing, joint: { a }, motion }: JointMarksProps) {
  return (
    <g className="joint-marks" aria-hidden="true">
      {a.bores.map(({ centreMm, axis }, i) => {
        const way = a.face?.normal ?? axis
        const at =
          a.face === null
            ? centreMm
            : plus(centreMm, times(way, dot(minus(a.face.pointMm, centreMm), way)))
        const spot = (mm: number) => {
          const along = times(mapDirection(motion, way), mm)
          return onSheet(drawing, plus(mapPoint(motion, at), along))
        }
        const [[x, y], from, to] = [spot(0), spot(-AXIS_MM), spot(AXIS_MM)]
        const aside = i % 2 === 0 ? -ASIDE_PX : ASIDE_PX
        return (
          <g key={centreMm.join(' ')}>
            <path className="joint-axis" d={`M${from.join(' ')}L${to.join(' ')}`} />
            <circle className="joint-spot" cx={x} cy={y} r="4" />
            <circle className="joint-disc" cx={x + aside} cy={y} r="8" />
            <text className="joint-number" x={x + aside} y={y + 3.5}>
              {i + 1}
            </text>
          </g>
        )
      })}
    </g>
  )
}

interface MouthMarksProps {
  readonly drawing: LineDrawing
  readonly mouths: readonly Mouth[]
  readonly motion: RigidMap
  readonly picked: number | null
  readonly onPick: (place: number) => void
}

/** The holes of a standing piece, to press; the list beside the drawing serves the keyboard. */
export function MouthMarks({ drawing, mouths, motion, picked, onPick }: MouthMarksProps) {
  return (
    <g className="mouth-marks" aria-hidden="true">
      {mouths.map(({ atMm }, i) => {
        const [x, y] = onSheet(drawing, mapPoint(motion, atMm))
        return (
          <circle
            key={atMm.join(' ') + String(i)}
            className={i === picked ? 'mouth-mark mouth-picked' : 'mouth-mark'}
            cx={x}
            cy={y}
            r="6"
            onPointerDown={(event) => {
              // Else the drawing would be turned.
              event.stopPropagation()
            }}
            onClick={() => {
              onPick(i)
            }}
          />
        )
      })}
    </g>
  )
}
