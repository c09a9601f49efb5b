import { backwards, factorise, forwards, type Triangle } from '../../doubt/cholesky.ts'
import { applyLevel } from './applyLevel.ts'
import { coarsen } from './coarsen.ts'
import { diagonalOf } from './diagonal.ts'
import { createSmoother, type Operator, type Smoother } from './smooth.ts'
import { createTransfer, type Transfer } from './transfer.ts'
import type { Field, Level } from './types.ts'

/** A held part as a matrix, with something near its inverse. */
export interface HeldSystem {
  readonly level: Level
  readonly apply: Operator
  /** One cycle through all levels; symmetric and positive. */
  readonly precondition: Operator
  readonly inverseDiagonal: Field
}

/** Few enough to be solved at once. */
const DIRECT_NUMBERS = 400
/**
 * Held nodes are springs on coarser levels, so many times as stiff as their own cells: firm, not
 * rigid.
 */
const FIRM = 20

interface Storey {
  readonly level: Level
  readonly apply: Operator
  readonly smoother: Smoother
  readonly load: Field
  readonly moves: Field
  readonly rest: Field
  readonly down: Transfer | null
}

/**
 * Levels of a part for conjugate gradients: Chebyshev on the diagonal, moduli averaged from level
 * to level, held nodes as springs on the coarser ones (A. Brandt, Math. Comp. 31, 1977; the
 * smoother after M. Adams et al., J. Comput. Phys. 188, 2003), bends carried down and up as bends.
 *
 * @param held by number of a field: 1 where a node does not move.
 */
export function holdPart(level: Level, held: Uint8Array): HeldSystem {
  const fine = diagonalOf(level)
  const inverseDiagonal = fine.map((value, i) => (held[i] === 1 ? 0 : 1 / value))
  const holds = Int32Array.from(
    (function* () {
      for (let i = 0; i < held.length; i++) if (held[i] === 1) yield i
    })(),
  )
  const apply: Operator = (moves, forces) => {
    applyLevel(level, moves, forces)
    for (const at of holds) forces[at] = 0
  }
  const storeys: Storey[] = []
  let springs: Field = fine.map((value, i) => (held[i] === 1 ? FIRM * value : 0))
  let now: Level = level
  let operator = apply
  let inverse: Field = inverseDiagonal
  for (;;) {
    const numbers = 3 * now.nodes
    const coarse = numbers > DIRECT_NUMBERS ? coarsen(now) : null
    const down = coarse && createTransfer(now, coarse)
    storeys.push({
      level: now,
      apply: operator,
      smoother: createSmoother(operator, inverse),
      load: new Float64Array(numbers),
      moves: new Float64Array(numbers),
      rest: new Float64Array(numbers),
      down,
    })
    if (coarse === null || down === null) break
    const coarseSprings = new Float64Array(3 * coarse.nodes)
    down.springsToCoarse(springs, coarseSprings)
    springs = coarseSprings
    operator = withSprings(coarse, coarseSprings)
    inverse = diagonalOf(coarse).map((value, i) => 1 / (value + coarseSprings[i]!))
    now = coarse
  }
  const last = storeys.at(-1)!
  const direct = 3 * last.level.nodes <= DIRECT_NUMBERS ? solveDirectly(last) : null
  const precondition: Operator = (load, moves) => descend(storeys, 0, direct, load, moves)
  return { level, apply, precondition, inverseDiagonal }
}

function withSprings(level: Level, springs: Field): Operator {
  return (moves, forces) => {
    applyLevel(level, moves, forces)
    for (let i = 0; i < springs.length; i++) forces[i]! += springs[i]! * moves[i]!
  }
}

/** Overwrites `moves`. */
function descend(
  storeys: readonly Storey[],
  at: number,
  direct: Operator | null,
  load: Field,
  moves: Field,
): void {
  const storey = storeys[at]!
  const below = storeys[at + 1]
  if (below === undefined || storey.down === null) {
    if (direct === null) storey.smoother.run(load, moves, true)
    else direct(load, moves)
    return
  }
  const { apply, smoother, rest, down } = storey
  smoother.run(load, moves, true)
  apply(moves, rest)
  for (let i = 0; i < rest.length; i++) rest[i] = load[i]! - rest[i]!
  down.toCoarse(rest, below.load)
  descend(storeys, at + 1, direct, below.load, below.moves)
  if (at > 0) {
    down.addFine(below.moves, moves)
  } else {
    // What is held on the finest level has no number in its matrix.
    rest.fill(0)
    down.addFine(below.moves, rest)
    const { inverse } = storey.smoother
    for (let i = 0; i < rest.length; i++) if (inverse[i]! > 0) moves[i]! += rest[i]!
  }
  smoother.run(load, moves, false)
}

/**
 * The whole matrix, column by column, factorised; null where rounding left it without a positive
 * root.
 */
function solveDirectly({ apply, moves, rest }: Storey): Operator | null {
  const count = moves.length
  const columns: Float64Array[] = []
  for (let i = 0; i < count; i++) {
    moves.fill(0)
    moves[i] = 1
    apply(moves, rest)
    columns.push(rest.slice())
  }
  const free = Int32Array.from(columns.keys()).filter((i) => columns[i]![i]! > 0)
  let lower: Triangle
  try {
    lower = factorise(free.length, (i, j) => columns[free[i]!]![free[j]!]!)
  } catch {
    return null
  }
  const packed = new Float64Array(free.length)
  return (load, into) => {
    free.forEach((at, i) => (packed[i] = load[at]!))
    const solved = backwards(lower, forwards(lower, packed))
    into.fill(0)
    free.forEach((at, i) => (into[at] = solved[i]!))
  }
}
