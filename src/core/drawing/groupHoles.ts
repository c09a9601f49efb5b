import type { Hole } from '../mesh/holes/findHoles.ts'
import { dot } from '../model/vectors.ts'
import { onSheet } from './onSheet.ts'
import type { Painted } from './paint.ts'
import type { LineDrawing } from './types.ts'
import { viewAxes } from './viewAxes.ts'

/** Holes of one diameter that lie alike. */
export interface HoleGroup {
  readonly diameterMm: number
  readonly depthMm: { readonly low: number; readonly high: number }
  /** Open at both ends. */
  readonly through: boolean
  /** Upright holes come out round; level ones have a roof. */
  readonly lies: 'upright' | 'level' | 'slanted'
  /** Middle of each one's mouth on the sheet, px. */
  readonly places: readonly HolePlace[]
}

export interface HolePlace {
  readonly x: number
  readonly y: number
  /** Its mouth faces the eye and nothing stands before it. */
  readonly isSeen: boolean
}

/** Diameters this near are one. mm */
const SAME_MM = 0.05
/** Sine of what still counts as upright or level. */
const LEAN = Math.sin((5 * Math.PI) / 180)
/** A mouth seen flatter than this is edge-on (cosine). */
const EDGE_ON = 0.1
/** The wall of a hole may stand before its mouth by as much. mm */
const SLACK_MM = 0.3

/** Groups a placed part's holes (mm), the most numerous first, then the widest. */
export function groupHoles(
  holes: readonly Hole[],
  drawing: LineDrawing,
  painted: Painted,
): readonly HoleGroup[] {
  const groups = new Map<string, Hole[]>()
  for (const hole of holes) {
    const key = `${Math.round(hole.diameter / SAME_MM)} ${hole.through} ${liesOf(hole)}`
    const known = groups.get(key)
    if (known === undefined) groups.set(key, [hole])
    else known.push(hole)
  }
  return [...groups.values()]
    .map((own): HoleGroup => {
      const depths = own.map(({ depth }) => depth)
      const first = own[0]!
      return {
        diameterMm: own.reduce((sum, { diameter }) => sum + diameter, 0) / own.length,
        depthMm: { low: Math.min(...depths), high: Math.max(...depths) },
        through: first.through,
        lies: liesOf(first),
        places: own.map((hole) => placeOf(hole, drawing, painted)),
      }
    })
    .toSorted((a, b) => b.places.length - a.places.length || b.diameterMm - a.diameterMm)
}

function liesOf({ axis }: Hole): HoleGroup['lies'] {
  const upright = Math.abs(axis[2])
  return upright > Math.sqrt(1 - LEAN * LEAN) ? 'upright' : upright < LEAN ? 'level' : 'slanted'
}

function placeOf({ axis, centre, depth }: Hole, drawing: LineDrawing, painted: Painted): HolePlace {
  const { toEye } = viewAxes(drawing.view)
  const facing = dot(axis, toEye)
  const reach = (Math.sign(facing) * depth) / 2
  const mouth = [0, 1, 2].map((k) => centre[k]! + reach * axis[k]!) as [number, number, number]
  const [x, y] = onSheet(drawing, mouth)
  const column = Math.floor(x * painted.samples)
  const row = Math.floor(y * painted.samples)
  const isOnSheet = column >= 0 && row >= 0 && column < painted.width && row < painted.height
  const before = isOnSheet ? painted.depth[row * painted.width + column]! : Infinity
  const isSeen = Math.abs(facing) > EDGE_ON && before <= dot(mouth, toEye) + SLACK_MM
  return { x, y, isSeen }
}
