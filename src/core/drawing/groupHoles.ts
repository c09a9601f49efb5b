import { isThrough, numberHoles, type Lies } from '../mesh/holes/numberHoles.ts'
import type { Seat, WholeHole } from '../mesh/holes/wholeHoles.ts'
import { dot, plus, times } from '../model/vectors.ts'
import { onSheet } from './onSheet.ts'
import type { Painted } from './paint.ts'
import type { LineDrawing } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** Holes that are alike, as the drill list numbers them. */
export interface HoleGroup {
  readonly group: number
  readonly shape: WholeHole['shape']
  readonly diameterMm: number
  /** Of a slot, over all; of others their diameter. */
  readonly lengthMm: number
  readonly seats: readonly Seat[]
  readonly depthMm: { readonly low: number; readonly high: number }
  /** Open at both ends. */
  readonly through: boolean
  /** Upright holes come out round; level ones have a roof. */
  readonly lies: Lies
  /** Middle of each one's mouth on the sheet, px. */
  readonly places: readonly HolePlace[]
}

export interface HolePlace {
  /** As `2.1`. */
  readonly number: string
  readonly x: number
  readonly y: number
  /** Its mouth faces the eye and nothing stands before it. */
  readonly isSeen: boolean
}

/** A mouth seen flatter than this is edge-on (cosine). */
const EDGE_ON = 0.1
/** The wall of a hole may stand before its mouth by as much. mm */
const SLACK_MM = 0.3

/** Groups a placed part's holes (mm) as `numberHoles` does, and finds them on the sheet. */
export function groupHoles(
  holes: readonly WholeHole[],
  drawing: LineDrawing,
  painted: Painted,
): readonly HoleGroup[] {
  return numberHoles(holes, (hole) => hole).map(({ group, lies, holes: own }): HoleGroup => {
    const depths = own.map(({ hole }) => hole.depthMm)
    const first = own[0]!.hole
    const diameterMm = own.reduce((sum, { hole }) => sum + hole.diameterMm, 0) / own.length
    return {
      group,
      shape: first.shape,
      diameterMm,
      lengthMm: diameterMm + first.stretchMm,
      seats: first.seats,
      depthMm: { low: Math.min(...depths), high: Math.max(...depths) },
      through: isThrough(first),
      lies,
      places: own.map(({ number, hole }) => ({ number, ...placeOf(hole, drawing, painted) })),
    }
  })
}

function placeOf(
  { axis, centreMm, depthMm }: WholeHole,
  drawing: LineDrawing,
  painted: Painted,
): Omit<HolePlace, 'number'> {
  const { toEye } = viewAxes(drawing.view)
  const facing = dot(axis, toEye)
  const mouth = plus(centreMm, times(axis, (Math.sign(facing) * depthMm) / 2))
  const [x, y] = onSheet(drawing, mouth)
  const column = Math.floor(x * painted.samples)
  const row = Math.floor(y * painted.samples)
  const isOnSheet = column >= 0 && row >= 0 && column < painted.width && row < painted.height
  const before = isOnSheet ? painted.depth[row * painted.width + column]! : Infinity
  const isSeen = Math.abs(facing) > EDGE_ON && before <= dot(mouth, toEye) + SLACK_MM
  return { x, y, isSeen }
}
