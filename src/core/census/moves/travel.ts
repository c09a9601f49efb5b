import type { Seams } from './seams.ts'
import type { ZigzagEnds } from './zigzags.ts'

/** Where the head is. mm */
export interface Place {
  x: number
  y: number
}

/**
 * Outlines beyond this many are visited in file order: looking for the nearest each time grows with
 * the square.
 */
const MOST_SORTED = 400
/** The next zigzag is looked for among so many that come next across the layer. */
const WINDOW = 150
/** Those zigzags, in the order they come. */
const window = new Int32Array(WINDOW)

/** Which contour is begun next, and how. */
interface WallEntry {
  /** Its number among those left. */
  readonly k: number
  /** Where in `Seams.places`. */
  readonly at: number
  readonly mm: number
  readonly fromOutside: boolean
}

/**
 * The nearest place where one of the contours `left` may begin, on the outer or the inner side of
 * the wall.
 */
function nearestWall(
  { start, places, middle }: Seams,
  left: readonly number[],
  outer: number,
  inner: number,
  here: Place,
): WallEntry {
  let best = 0
  let bestAt = 4 * start[left[0]!]!
  let best2 = Infinity
  let bestMm = Infinity
  let fromOutside = true
  const search = left.length <= MOST_SORTED ? left.length : 1
  for (let k = 0; k < search; k++) {
    const c = left[k]!
    const middleX = middle[3 * c]! - here.x
    const middleY = middle[3 * c + 1]! - here.y
    const reach = middle[3 * c + 2]! + bestMm
    if (middleX * middleX + middleY * middleY > reach * reach) continue
    for (let i = 4 * start[c]!; i < 4 * start[c + 1]!; i += 4) {
      const x = places[i]! - here.x
      const y = places[i + 1]! - here.y
      const wayX = places[i + 2]!
      const wayY = places[i + 3]!
      const outX = x + wayX * outer
      const outY = y + wayY * outer
      const inX = x + wayX * inner
      const inY = y + wayY * inner
      const out2 = outX * outX + outY * outY
      const in2 = inX * inX + inY * inY
      const least = Math.min(out2, in2)
      if (least >= best2) continue
      best = k
      bestAt = i
      best2 = least
      bestMm = Math.sqrt(least)
      fromOutside = out2 <= in2
    }
  }
  return { k: best, at: bestAt, mm: bestMm, fromOutside }
}

/** Way to where the walls of a layer may begin; none where there are no walls. mm */
export function wayToWalls(seams: Seams, walls: number, lineMm: number, here: Place): number {
  const all = upTo(seams.start.length - 1)
  if (walls === 0 || all.length === 0) return 0
  return nearestWall(seams, all, lineMm / 2, (walls - 0.5) * lineMm, here).mm
}

/**
 * Goes round every contour, always to the nearest place where one not yet visited may begin, wall
 * lines from the nearer side of the wall to the other. Moves `here` to where the last line ends;
 * the way to the first is not counted.
 */
export function visitWalls(
  seams: Seams,
  walls: number,
  lineMm: number,
  here: Place,
  hops: number[],
): void {
  const { places } = seams
  const left = upTo(seams.start.length - 1)
  const outer = lineMm / 2
  const inner = (walls - 0.5) * lineMm
  for (let first = true; left.length > 0; first = false) {
    const { k, at, mm, fromOutside } = nearestWall(seams, left, outer, inner, here)
    if (!first) hops.push(mm)
    const wayX = places[at + 2]!
    const wayY = places[at + 3]!
    const stepMm = lineMm * Math.sqrt(wayX * wayX + wayY * wayY)
    for (let n = 1; n < walls; n++) hops.push(stepMm)
    const depth = fromOutside ? inner : outer
    here.x = places[at]! + wayX * depth
    here.y = places[at + 1]! + wayY * depth
    left[k] = left[left.length - 1]!
    left.pop()
  }
}

/**
 * Lays zigzags, always the nearest next one, from either end. Of the two ways they can be laid, the
 * one of fewer zigzags is taken, or else the one that begins nearer. Moves `here` to where the last
 * one ends.
 */
export function visitZigzags(
  ways: readonly [ZigzagEnds, ZigzagEnds],
  here: Place,
  hops: number[],
): void {
  if (ways[0].length === 0) return
  const fewer = ways[1].length - ways[0].length || nearest2(ways[1], here) - nearest2(ways[0], here)
  const ends = fewer < 0 ? ways[1] : ways[0]
  const count = ends.length / 4
  let inSight = 0
  let next = 0
  while (inSight < WINDOW && next < count) window[inSight++] = next++
  while (inSight > 0) {
    let best = 0
    let best2 = Infinity
    let exit = 0
    for (let k = 0; k < inSight; k++) {
      const i = 4 * window[k]!
      for (let side = 0; side < 4; side += 2) {
        const x = ends[i + side]! - here.x
        const y = ends[i + side + 1]! - here.y
        const square = x * x + y * y
        if (square >= best2) continue
        best = k
        best2 = square
        exit = i + 2 - side
      }
    }
    hops.push(Math.sqrt(best2))
    here.x = ends[exit]!
    here.y = ends[exit + 1]!
    window.copyWithin(best, best + 1, inSight)
    if (next < count) window[inSight - 1] = next++
    else inSight--
  }
}

function nearest2(ends: ZigzagEnds, here: Place): number {
  let least = Infinity
  for (let i = 0; i < ends.length; i += 2) {
    least = Math.min(least, (ends[i]! - here.x) ** 2 + (ends[i + 1]! - here.y) ** 2)
  }
  return least
}

function upTo(count: number): number[] {
  const list: number[] = []
  for (let i = 0; i < count; i++) list.push(i)
  return list
}
