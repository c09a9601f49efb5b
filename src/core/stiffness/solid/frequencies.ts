import { product } from './conjugateGradients.ts'
import { smallestPairs } from './smallestPairs.ts'
import type { HeldSystem } from './multigrid.ts'
import type { Field } from './types.ts'

export interface Tones {
  /** Rising. Hz */
  readonly hz: readonly number[]
  readonly shapes: readonly Field[]
  readonly steps: number
}

export interface ToneOptions {
  readonly count: number
  /** Of a frequency, from one step to the next. */
  readonly tolerance: number
  readonly mostSteps: number
  readonly watch?: (step: number) => boolean
}

/** Shapes followed beside those wanted: the last ones settle slowly. */
const SPARE_SHAPES = 2

/**
 * Lowest frequencies of a held part: locally optimal block preconditioned conjugate gradients (A.
 * V. Knyazev, SIAM J. Sci. Comput. 23(2), 2001, doi 10.1137/S1064827500366124).
 *
 * @param mass by number of a field, tonnes (N, mm and s ask for them); above 0 where it is free.
 */
export function lowestTones(
  { apply, precondition, inverseDiagonal }: HeldSystem,
  mass: Field,
  { count, tolerance, mostSteps, watch }: ToneOptions,
): Tones {
  const size = mass.length
  const block = count + SPARE_SHAPES
  const make = (): Vector => ({
    x: new Float64Array(size),
    k: new Float64Array(size),
    m: new Float64Array(size),
  })
  const measure = ({ x, k, m }: Vector): void => {
    apply(x, k)
    for (let i = 0; i < size; i++) m[i] = inverseDiagonal[i]! > 0 ? mass[i]! * x[i]! : 0
  }
  let shapes = startShapes(block, size, inverseDiagonal, precondition, make)
  shapes.forEach(measure)
  let ways: Vector[] = []
  let values = new Float64Array(block)
  let steps = 0
  let settled = 0
  while (steps < mostSteps) {
    const near = steps === 0 ? [] : shapes.map((shape, s) => betterWay(shape, values[s]!))
    near.forEach(measure)
    const all = [...shapes, ...near, ...ways]
    const pairs = smallestPairs(
      all.length,
      (i, j) => product(all[i]!.x, all[j]!.k),
      (i, j) => product(all[i]!.x, all[j]!.m),
      block,
    )
    // Where a shape goes is what it is made of besides the shapes before.
    const went = pairs.map(({ shares }) => addUp(near.concat(ways), shares.subarray(block), make()))
    shapes = pairs.map(({ shares }, s) => addUp(shapes, shares, copyOf(went[s]!)))
    ways = went
    const before = values
    values = Float64Array.from(pairs, ({ value }) => value)
    steps++
    const moved = Array.from({ length: count }, (_, s) => Math.abs(values[s]! / before[s]! - 1))
    settled = Math.max(...moved) < 2 * tolerance ? settled + 1 : 0
    if (settled >= 2 || watch?.(steps) === false) break
  }
  const hz = Array.from(values.subarray(0, count), (value) => Math.sqrt(value) / (2 * Math.PI))
  return { hz, shapes: shapes.slice(0, count).map(({ x }) => x), steps }

  function betterWay({ k, m }: Vector, value: number): Vector {
    const way = make()
    const rest = k.map((force, i) => force - value * m[i]!)
    precondition(rest, way.x)
    return way
  }
}

/** A shape with the forces that hold it and its mass. */
interface Vector {
  readonly x: Field
  readonly k: Field
  readonly m: Field
}

function copyOf({ x, k, m }: Vector): Vector {
  return { x: x.slice(), k: k.slice(), m: m.slice() }
}

/** Adds each of some vectors times its share, four in one walk: memory is what it waits for. */
function addUp(some: readonly Vector[], shares: Float64Array, into: Vector): Vector {
  for (const key of ['x', 'k', 'm'] as const) {
    const sum = into[key]
    let v = 0
    for (; v + 3 < some.length; v += 4) {
      const [a, b, c, d] = [some[v]![key], some[v + 1]![key], some[v + 2]![key], some[v + 3]![key]]
      const [p, q, r, s] = [shares[v]!, shares[v + 1]!, shares[v + 2]!, shares[v + 3]!]
      for (let i = 0; i < sum.length; i++) {
        sum[i]! += p * a[i]! + q * b[i]! + r * c[i]! + s * d[i]!
      }
    }
    for (; v < some.length; v++) {
      const [share, part] = [shares[v]!, some[v]![key]]
      for (let i = 0; i < sum.length; i++) sum[i]! += share * part[i]!
    }
  }
  return into
}

/** Smooth shapes of all sorts: random forces, answered by the preconditioner. */
function startShapes(
  block: number,
  size: number,
  inverseDiagonal: Field,
  precondition: HeldSystem['precondition'],
  make: () => Vector,
): Vector[] {
  let state = 7
  return Array.from({ length: block }, () => {
    const force = new Float64Array(size)
    for (let i = 0; i < size; i++) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
      force[i] = inverseDiagonal[i]! > 0 ? state / 2 ** 32 - 0.5 : 0
    }
    const vector = make()
    precondition(force, vector.x)
    return vector
  })
}
