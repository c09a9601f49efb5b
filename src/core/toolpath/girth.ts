/** Directions that a plan is measured across, evenly over half a turn. */
const STEPS = 36

/** How wide a plan is across each of `STEPS` directions, the first along x. mm */
export type Girth = Float64Array

/**
 * A skirt may stand a few layers high; what reaches out in no more than these is none of the part.
 */
const SKIRT_LAYERS = 5
/** Of a print with few layers, it is at most this share of them. */
const SKIRT_SHARE = 0.25
const KEPT = SKIRT_LAYERS + 1

const COS = Float64Array.from({ length: STEPS }, (_, k) => Math.cos((Math.PI * k) / STEPS))
const SIN = Float64Array.from({ length: STEPS }, (_, k) => Math.sin((Math.PI * k) / STEPS))

/** Measures a plan from points of its layers, each the middle of a disc of `radiusMm`. */
export function girthSeen(): {
  readonly add: (x: number, y: number, radiusMm: number) => void
  /** The points that follow are of another layer. */
  readonly nextLayer: () => void
  readonly girth: () => Girth
} {
  // Of each direction the furthest that layers reach, a few of them: more are never skipped.
  const furthest = new Float64Array(STEPS * KEPT).fill(-Infinity)
  const nearest = new Float64Array(STEPS * KEPT).fill(Infinity)
  const low = new Float64Array(STEPS).fill(Infinity)
  const high = new Float64Array(STEPS).fill(-Infinity)
  let layers = 0
  const close = (): void => {
    if (high[0] === -Infinity) return
    layers++
    for (let k = 0; k < STEPS; k++) {
      insert(furthest, k, high[k]!, (one, other) => one > other)
      insert(nearest, k, low[k]!, (one, other) => one < other)
    }
    low.fill(Infinity)
    high.fill(-Infinity)
  }
  return {
    add(x, y, radiusMm) {
      for (let k = 0; k < STEPS; k++) {
        const at = x * COS[k]! + y * SIN[k]!
        if (at - radiusMm < low[k]!) low[k] = at - radiusMm
        if (at + radiusMm > high[k]!) high[k] = at + radiusMm
      }
    },
    nextLayer: close,
    girth() {
      close()
      if (layers === 0) return new Float64Array(STEPS)
      const skip = Math.min(SKIRT_LAYERS, Math.floor(SKIRT_SHARE * layers))
      return Float64Array.from(
        { length: STEPS },
        (_, k) => furthest[k * KEPT + skip]! - nearest[k * KEPT + skip]!,
      )
    },
  }
}

/** Puts a value into its place among the kept ones of a direction; the last falls out. */
function insert(
  kept: Float64Array,
  direction: number,
  value: number,
  isBefore: (one: number, other: number) => boolean,
): void {
  const first = direction * KEPT
  let at = first + KEPT - 1
  if (!isBefore(value, kept[at]!)) return
  while (at > first && isBefore(value, kept[at - 1]!)) {
    kept[at] = kept[at - 1]!
    at--
  }
  kept[at] = value
}

/** The same of a mesh placed on the bed. `positions`: x, y, z, stride 3. */
export function girthOfMesh(positions: ArrayLike<number>): Girth {
  const { add, girth } = girthSeen()
  for (let i = 0; i < positions.length; i += 3) add(positions[i]!, positions[i + 1]!, 0)
  return girth()
}

/** The largest difference between two plans, turned against each other as suits them best. mm */
export function girthMisfitMm(a: Girth, b: Girth): number {
  let least = Infinity
  for (let turn = 0; turn < STEPS; turn++) {
    let most = 0
    for (let k = 0; k < STEPS; k++) {
      most = Math.max(most, Math.abs(a[k]! - b[(k + turn) % STEPS]!))
    }
    least = Math.min(least, most)
  }
  return least
}
