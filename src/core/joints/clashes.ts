import { boxOfMesh } from '../mesh/boxOfMesh.ts'
import type { Mesh, Vec3 } from '../model/mesh.ts'
import { plus, times } from '../model/vectors.ts'
import { flatAxes } from '../mesh/holes/fitCircle.ts'
import { mapPoint, type RigidMap } from '../mesh/rigidMaps.ts'
import { columnsOf, type Columns } from './columns.ts'
import { isImage } from './standingPieces.ts'
import { turnedOver } from '../mesh/turnedOver.ts'

/** Surfaces nearer than this touch. mm */
const TOUCH_MM = 0.02
/** Columns looked at where two boxes overlap, about. */
const SAMPLES = 2500

/** A solid where it is on the aircraft. */
export interface LaidSolid {
  /** In mm, in the part's own axes, faced outwards. */
  readonly mesh: Mesh
  readonly motion: RigidMap
}

/** What two solids share. */
export interface Shared {
  readonly volumeMm3: number
  /** The middle of it; of nothing the origin. mm */
  readonly atMm: Vec3
}

const NOTHING: Shared = { volumeMm3: 0, atMm: [0, 0, 0] }
const UPWARDS: Vec3 = [0, 0, 1]

/**
 * How much of two solids is in each other and where, for each of the pairs, by columns upwards;
 * where facets of a shaft and of its bore cross it counts too.
 *
 * @param pairs places in `solids`.
 */
export function clashesOf(
  solids: readonly LaidSolid[],
  pairs: readonly (readonly [one: number, other: number])[],
): readonly Shared[] {
  const laid = solids.map(lay)
  const boxes = laid.map(boxOfMesh)
  const known = new Map<number, Columns>()
  const columns = (place: number): Columns => {
    const before = known.get(place)
    if (before !== undefined) return before
    const made = columnsOf(laid[place]!, UPWARDS)
    known.set(place, made)
    return made
  }
  return pairs.map(([one, other]) => {
    const [a, b] = [boxes[one]!, boxes[other]!]
    const isApart = ([0, 1, 2] as const).some(
      (k) => a.min[k] >= b.max[k] - TOUCH_MM || b.min[k] >= a.max[k] - TOUCH_MM,
    )
    return isApart ? NOTHING : sharedOf(columns(one), columns(other))
  })
}

function lay({ mesh, motion }: LaidSolid): Mesh {
  const positions = new Float64Array(mesh.positions.length)
  for (let v = 0; v < positions.length; v += 3) {
    const [x, y, z] = [mesh.positions[v]!, mesh.positions[v + 1]!, mesh.positions[v + 2]!]
    positions.set(mapPoint(motion, [x, y, z]), v)
  }
  // A mirror image would face inwards.
  return isImage(motion)
    ? turnedOver({ positions, indices: mesh.indices })
    : { positions, indices: mesh.indices }
}

function sharedOf(a: Columns, b: Columns): Shared {
  const [ax0, ax1, ay0, ay1] = a.box
  const [bx0, bx1, by0, by1] = b.box
  const [x0, x1] = [Math.max(ax0, bx0), Math.min(ax1, bx1)]
  const [y0, y1] = [Math.max(ay0, by0), Math.min(ay1, by1)]
  if (!(x1 > x0) || !(y1 > y0)) return NOTHING
  const step = Math.sqrt(((x1 - x0) * (y1 - y0)) / SAMPLES)
  const [columns, rows] = [Math.ceil((x1 - x0) / step), Math.ceil((y1 - y0) / step)]
  const [dx, dy] = [(x1 - x0) / columns, (y1 - y0) / rows]
  const sum: Sum = { all: 0, x: 0, y: 0, height: 0 }
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [x, y] = [x0 + (column + 0.5) * dx, y0 + (row + 0.5) * dy]
      // The second asking may use the list of the first again.
      const own = a.spansAt(x, y).slice()
      if (own.length > 0) addShared(sum, own, b.spansAt(x, y), x, y)
    }
  }
  if (sum.all === 0) return NOTHING
  const { right, up } = flatAxes(UPWARDS)
  const across = plus(times(right, sum.x / sum.all), times(up, sum.y / sum.all))
  const atMm = plus(across, times(UPWARDS, sum.height / sum.all))
  return { volumeMm3: sum.all * dx * dy, atMm }
}

/** Of shared heights, and of those times where they lie in the columns' axes. */
interface Sum {
  all: number
  x: number
  y: number
  height: number
}

function addShared(
  sum: Sum,
  a: readonly number[],
  b: readonly number[],
  x: number,
  y: number,
): void {
  for (let i = 0; i < a.length; i += 2) {
    for (let j = 0; j < b.length; j += 2) {
      const [low, high] = [Math.max(a[i]!, b[j]!), Math.min(a[i + 1]!, b[j + 1]!)]
      const shared = high - low
      if (shared <= TOUCH_MM) continue
      sum.all += shared
      sum.x += shared * x
      sum.y += shared * y
      sum.height += (shared * (low + high)) / 2
    }
  }
}
