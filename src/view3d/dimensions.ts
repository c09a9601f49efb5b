import { BufferAttribute, BufferGeometry, Vector3, type Box3, type OrthographicCamera } from 'three'

/** Distance of a dimension line from the part and length of its end ticks, in screen pixels. */
const GAP_PX = 20
const TICK_PX = 5
/**
 * A dimension seen shorter than this has no room for its number: looking along it, it is left out.
 */
const SHORTEST_PX = 34
/** Sine of the elevation under which the bed is seen too flat to carry the lines. */
const LEVEL_VIEW = 0.5

/** One dimension as it stands in the picture: `at` is the middle of its line. */
export interface Dimension {
  readonly axis: 'x' | 'y' | 'z'
  readonly lengthMm: number
  readonly at: Vector3
}

/** Room for three lines of two ticks each. */
export function createDimensionLines(): BufferGeometry {
  const geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(3 * 6 * 3), 3))
  return geometry
}

/**
 * Draws width and depth along the sides of the bounds that face the eye, and the height at the
 * corner furthest left, so that no line crosses the part. Rewrites `lines`; returns the dimensions
 * that have room.
 */
export function drawDimensions(
  lines: BufferGeometry,
  bounds: Box3,
  eye: OrthographicCamera,
): readonly Dimension[] {
  const { min, max } = bounds
  const gap = GAP_PX / eye.zoom
  const tick = TICK_PX / eye.zoom
  const right = new Vector3().setFromMatrixColumn(eye.matrixWorld, 0)
  const towardsEye = new Vector3().setFromMatrixColumn(eye.matrixWorld, 2)
  // The sides that lie lower in the picture: the near ones from above, the far ones from under the
  // bed.
  const under = towardsEye.z < -1e-6 ? -1 : 1
  const lowX = under * towardsEye.x >= 0 ? max.x + gap : min.x - gap
  const lowY = under * towardsEye.y > 0 ? max.y + gap : min.y - gap
  // Looking along the bed, a step on it is no step in the picture: go below it instead.
  const flat = Math.min(1, Math.abs(towardsEye.z) / LEVEL_VIEW)
  const z = -gap * (1 - flat)
  const upright = tick * (1 - flat)
  const corner = furthestLeft(bounds, right)
  const level = new Vector3(right.x, right.y, 0).normalize()
  corner.addScaledVector(level, -gap)

  const wanted: { dimension: Dimension; from: Vector3; to: Vector3; tick: Vector3 }[] = []
  const add = (axis: 'x' | 'y' | 'z', from: Vector3, to: Vector3, tickAlong: Vector3) => {
    const lengthMm = from.distanceTo(to)
    const along = to.clone().sub(from)
    const depth = along.dot(towardsEye)
    const seenPx = Math.sqrt(Math.max(0, lengthMm ** 2 - depth ** 2)) * eye.zoom
    if (seenPx < SHORTEST_PX) return
    const at = from.clone().lerp(to, 0.5)
    wanted.push({ dimension: { axis, lengthMm, at }, from, to, tick: tickAlong })
  }
  add(
    'x',
    new Vector3(min.x, lowY, z),
    new Vector3(max.x, lowY, z),
    new Vector3(0, tick * flat, upright),
  )
  add(
    'y',
    new Vector3(lowX, min.y, z),
    new Vector3(lowX, max.y, z),
    new Vector3(tick * flat, 0, upright),
  )
  add(
    'z',
    new Vector3(corner.x, corner.y, min.z),
    new Vector3(corner.x, corner.y, max.z),
    level.multiplyScalar(tick),
  )

  const position = lines.getAttribute('position')
  let vertex = 0
  const put = (point: Vector3) => position.setXYZ(vertex++, point.x, point.y, point.z)
  for (const { from, to, tick: t } of wanted) {
    put(from)
    put(to)
    for (const end of [from, to]) {
      put(end.clone().sub(t))
      put(end.clone().add(t))
    }
  }
  lines.setDrawRange(0, vertex)
  position.needsUpdate = true
  return wanted.map(({ dimension }) => dimension)
}

function furthestLeft({ min, max }: Box3, right: Vector3): Vector3 {
  const x = right.x >= 0 ? min.x : max.x
  const y = right.y >= 0 ? min.y : max.y
  return new Vector3(x, y, 0)
}
