import { byMass, createSieve, frontOf } from './sieve.ts'
import type { Assignment, Ceilings, Option, PartOptions, Worth } from './types.ts'

/** How far a search is. */
export interface SearchStep {
  readonly partsDone: number
  readonly parts: number
  /** Partial assignments kept so far. */
  readonly kept: number
}

/** Some parts with an option each, and the assignment of the parts before. */
interface Partial extends Worth {
  readonly before: Partial | null
  readonly option: Option | null
}

/** What lies ahead of the search costs at least this. */
type Least = Omit<Worth, 'stiffness'>

const NOTHING: Partial = {
  massG: 0,
  timeS: 0,
  cost: 0,
  stiffness: Infinity,
  before: null,
  option: null,
}

/** So many candidates are looked at between two steps of the generator: some milliseconds. */
const BETWEEN_STEPS = 20_000
/** A sum of limits met exactly may miss by what floating point leaves. */
const ROUNDING = 1e-9

/**
 * Every assignment of options to parts that no other is as good as in grams, hours, money and
 * stiffness together, within the ceilings, one for each worth there is; lightest first. A
 * generator: whoever calls it stops, goes on or gives up between two steps.
 *
 * Why parts may be done one by one, dropping what is beaten: grams, hours and money of a frame are
 * sums over its parts, its stiffness share the least of theirs, and both grow with each part's own.
 * So let p be an assignment of some parts that q beats or equals in all four; whatever the other
 * parts get, p with it is beaten or equalled by q with it, and where the first is within the
 * ceilings so is the second. Nothing is lost by going on with q alone; by induction over the parts
 * the last front is that of all assignments. What with the least of all parts to come is above a
 * ceiling is dropped too: it can only get worse. Held against all assignments in
 * `tests/core/choose/findFront`.
 */
export function* findFront(
  parts: readonly PartOptions[],
  ceilings: Ceilings = {},
): Generator<SearchStep, readonly Assignment[], void> {
  const fronts = parts.map(({ options }) => frontOf(options))
  // Small ones first: what is kept stays small for longer.
  const order = parts.map((_, i) => i).toSorted((a, b) => lengthOf(fronts, a) - lengthOf(fronts, b))
  const ahead = leastAhead(order.map((i) => fronts[i] ?? []))
  let kept: readonly Partial[] = [NOTHING]
  for (const [done, i] of order.entries()) {
    const room = roomFor(ceilings, ahead[done + 1])
    kept = yield* mergeWith(kept, fronts[i] ?? [], room, {
      partsDone: done,
      parts: parts.length,
    })
    yield { partsDone: done + 1, parts: parts.length, kept: kept.length }
  }
  // Once more: sums that floating point made equal may have come in the wrong order.
  return frontOf(kept).map((last) => assignmentOf(last, order))
}

/**
 * The front of all sums of one of `kept` and one of `options`. Both are sorted by mass, and so is
 * each row "kept plus this option": a heap of the rows' heads hands all sums out lightest first.
 */
function* mergeWith(
  kept: readonly Partial[],
  options: readonly Option[],
  room: Least,
  place: Pick<SearchStep, 'partsDone' | 'parts'>,
): Generator<SearchStep, readonly Partial[], void> {
  const sieve = createSieve(stiffnessesOf(kept, options))
  const front: Partial[] = []
  const heap: Row[] = []
  let looked = 0
  /** The next of a row that may belong to the front: what is covered now stays covered. */
  const put = (row: number, from: number): void => {
    const option = options[row]
    if (option === undefined) return
    for (let at = from; at < kept.length; at++) {
      looked++
      const sum = sumOf(kept[at] ?? NOTHING, option)
      if (sum.massG > room.massG) return
      if (sum.timeS > room.timeS || sum.cost > room.cost || sieve.covers(sum)) continue
      push(heap, { sum, row, at })
      return
    }
  }
  for (let row = 0; row < options.length; row++) put(row, 0)
  let told = 0
  for (let top = pop(heap); top !== undefined; top = pop(heap)) {
    if (sieve.letsThrough(top.sum)) front.push(top.sum)
    put(top.row, top.at + 1)
    if (looked - told < BETWEEN_STEPS) continue
    told = looked
    yield { ...place, kept: front.length }
  }
  return front
}

function sumOf(before: Partial, option: Option): Partial {
  return {
    massG: before.massG + option.massG,
    timeS: before.timeS + option.timeS,
    cost: before.cost + option.cost,
    stiffness: Math.min(before.stiffness, option.stiffness),
    before,
    option,
  }
}

function* stiffnessesOf(...all: readonly (readonly Worth[])[]): Generator<number> {
  for (const worths of all) for (const { stiffness } of worths) yield stiffness
}

/** For each number of parts done, the least that those still to come add. */
function leastAhead(fronts: readonly (readonly Worth[])[]): readonly Least[] {
  const ahead: Least[] = [{ massG: 0, timeS: 0, cost: 0 }]
  for (const front of fronts.toReversed()) {
    const after = ahead[0] ?? NOTHING
    ahead.unshift({
      massG: after.massG + least(front.map(({ massG }) => massG)),
      timeS: after.timeS + least(front.map(({ timeS }) => timeS)),
      cost: after.cost + least(front.map(({ cost }) => cost)),
    })
  }
  return ahead
}

function roomFor({ massG, timeS, cost }: Ceilings, ahead: Least = NOTHING): Least {
  const room = (most: number | undefined, taken: number): number =>
    most === undefined ? Infinity : most - taken + ROUNDING * Math.max(1, most)
  return {
    massG: room(massG, ahead.massG),
    timeS: room(timeS, ahead.timeS),
    cost: room(cost, ahead.cost),
  }
}

function assignmentOf(last: Partial, order: readonly number[]): Assignment {
  const options: Option[] = []
  const { massG, timeS, cost, stiffness } = last
  let at: Partial | null = last
  for (const i of order.toReversed()) {
    if (at === null || at.option === null) break
    options[i] = at.option
    at = at.before
  }
  return { massG, timeS, cost, stiffness, options }
}

const lengthOf = (fronts: readonly (readonly unknown[])[], i: number): number =>
  fronts[i]?.length ?? 0

const least = (values: readonly number[]): number =>
  values.reduce((a, b) => Math.min(a, b), Infinity)

interface Row {
  readonly sum: Partial
  readonly row: number
  readonly at: number
}

/** A binary heap, least by `byMass` on top. */
function push(heap: Row[], row: Row): void {
  let at = heap.length
  heap.push(row)
  while (at > 0) {
    const up = (at - 1) >> 1
    const above = heap[up]
    if (above === undefined || byMass(above.sum, row.sum) <= 0) break
    heap[at] = above
    at = up
  }
  heap[at] = row
}

function pop(heap: Row[]): Row | undefined {
  const top = heap[0]
  const last = heap.pop()
  if (last === undefined || heap.length === 0) return top
  let at = 0
  for (;;) {
    let down = 2 * at + 1
    const right = heap[down + 1]
    let below = heap[down]
    if (below === undefined) break
    if (right !== undefined && byMass(right.sum, below.sum) < 0) {
      below = right
      down++
    }
    if (byMass(last.sum, below.sum) <= 0) break
    heap[at] = below
    at = down
  }
  heap[at] = last
  return top
}
