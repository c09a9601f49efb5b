import type { Painted } from './paint.ts'
import type { Anchor, Anchors } from './types.ts'

/** An anchor lies this deep inside what is seen of its item, or nearly as deep as that goes. px */
const DEEP_PX = 5
const DEEP_SHARE = 0.7

export interface ItemPlace {
  readonly areaPx2: number
  readonly anchors: Anchors | null
}

/**
 * Where leader lines may start, a px grid over the painted samples: inside the biggest visible
 * piece of each item, well away from its edge, the nearest such place to each side of the sheet,
 * and over how many others a leg runs to there.
 */
export function findAnchors(painted: Painted, itemCount: number): readonly ItemPlace[] {
  const grid = shrink(painted)
  const deep = depths(grid)
  return biggestPieces(grid, itemCount).map((piece) => ({
    areaPx2: piece.areaPx2,
    anchors: piece.members.length === 0 ? null : anchorsOf(grid, deep, piece.members),
  }))
}

/** One entry a px: item + 1, 0 for none. */
interface Grid {
  readonly width: number
  readonly height: number
  readonly item: Uint16Array
}

function shrink({ width, height, samples, label }: Painted): Grid {
  const across = Math.floor(width / samples)
  const down = Math.floor(height / samples)
  const item = new Uint16Array(across * down)
  for (let row = 0; row < down; row++) {
    for (let column = 0; column < across; column++) {
      const own = label[row * samples * width + column * samples]!
      item[row * across + column] = own === 0 ? 0 : ((own - 1) >> 2) + 1
    }
  }
  return { width: across, height: down, item }
}

/** Way to the nearest px of something else, px: two passes with steps of 1 and √2. */
function depths({ width, height, item }: Grid): Float32Array {
  const depth = new Float32Array(item.length)
  for (const step of [1, -1] as const) {
    const first = step === 1 ? 0 : item.length - 1
    for (let n = 0, at = first; n < item.length; n++, at += step) {
      const own = item[at]!
      if (own === 0) continue
      const column = at % width
      if (column === 0 || column === width - 1 || at < width || at >= width * (height - 1)) {
        depth[at] = 1
        continue
      }
      let least = step === 1 ? Infinity : depth[at]!
      const beside = at - step
      const past = at - step * width
      least = Math.min(
        least,
        item[beside] === own ? depth[beside]! + 1 : 1,
        item[past] === own ? depth[past]! + 1 : 1,
        item[past - 1] === own ? depth[past - 1]! + Math.SQRT2 : Math.SQRT2,
        item[past + 1] === own ? depth[past + 1]! + Math.SQRT2 : Math.SQRT2,
      )
      depth[at] = least
    }
  }
  return depth
}

interface Piece {
  /** px of the biggest connected piece, as places in the grid; none for a hidden item. */
  readonly members: readonly number[]
  /** Of all that is seen of the item. */
  readonly areaPx2: number
}

function biggestPieces(grid: Grid, itemCount: number): readonly Piece[] {
  const { item } = grid
  const seen = new Uint8Array(item.length)
  const best = Array.from({ length: itemCount }, (): Piece => ({ members: [], areaPx2: 0 }))
  for (let start = 0; start < item.length; start++) {
    const own = item[start]!
    if (own === 0 || seen[start] === 1) continue
    const members = flood(grid, seen, start)
    const known = best[own - 1]
    if (known === undefined) continue
    best[own - 1] = {
      members: members.length > known.members.length ? members : known.members,
      areaPx2: known.areaPx2 + members.length,
    }
  }
  return best
}

/** Everything of one item that hangs together with `start`; marks it in `seen`. */
function flood({ width, height, item }: Grid, seen: Uint8Array, start: number): readonly number[] {
  const own = item[start]!
  const members = [start]
  seen[start] = 1
  for (let next = 0; next < members.length; next++) {
    const at = members[next]!
    const column = at % width
    for (let side = 0; side < 4; side++) {
      const isOut =
        side === 0
          ? column === 0
          : side === 1
            ? column === width - 1
            : side === 2
              ? at < width
              : at >= width * (height - 1)
      if (isOut) continue
      const to = at + (side === 0 ? -1 : side === 1 ? 1 : side === 2 ? -width : width)
      if (seen[to] === 1 || item[to] !== own) continue
      seen[to] = 1
      members.push(to)
    }
  }
  return members
}

function anchorsOf(grid: Grid, depth: Float32Array, members: readonly number[]): Anchors {
  let deepest = 0
  for (const at of members) deepest = Math.max(deepest, depth[at]!)
  const enough = Math.min(DEEP_SHARE * deepest, DEEP_PX)
  const inner = members.filter((at) => depth[at]! >= enough)
  const { width } = grid
  const nearest = (towards: (at: number) => number): number => {
    let best = inner[0]!
    for (const at of inner) if (towards(at) < towards(best)) best = at
    return best
  }
  return {
    left: leg(
      grid,
      nearest((at) => at % width),
      -1,
      0,
    ),
    right: leg(
      grid,
      nearest((at) => -(at % width)),
      1,
      0,
    ),
    top: leg(
      grid,
      nearest((at) => Math.floor(at / width)),
      0,
      -1,
    ),
    bottom: leg(
      grid,
      nearest((at) => -Math.floor(at / width)),
      0,
      1,
    ),
  }
}

function leg({ width, height, item }: Grid, at: number, dx: number, dy: number): Anchor {
  const x = at % width
  const y = (at - x) / width
  const own = item[at]!
  let crossed = 0
  let before = own
  for (let c = x, r = y; c >= 0 && r >= 0 && c < width && r < height; c += dx, r += dy) {
    const here = item[r * width + c]!
    if (here !== before && here !== 0 && here !== own) crossed++
    before = here
  }
  return { x: x + 0.5, y: y + 0.5, crossed }
}
