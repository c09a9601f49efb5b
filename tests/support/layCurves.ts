import type { Path, Rings } from './layTool.ts'

type Point = readonly [x: number, y: number]

/** Where curves must reach, mm. */
interface Reach {
  readonly low: Point
  readonly high: Point
}

/**
 * Facets of one wave, as many as the hours have. One maker's toolpath draws 7 to 10; 48 and 96 take
 * 1.5 and 2.5 % longer over a ball that is mostly infill.
 */
const WAVE_FACETS = 24

/**
 * The cut of sin x cos y + sin y cos z + sin z cos x = 0 at a height: neighbouring winding lines,
 * `spacingMm` from each other in the mean, in the order in which they are laid. Solved for x where
 * they wind along y, which they do where |sin z| > |cos z|, and for y where along x.
 */
export function gyroidRows(reach: Reach, spacingMm: number, heightMm: number): GyroidRows {
  const scale = Math.PI / spacingMm
  const z = heightMm * scale
  const [sinZ, cosZ] = [Math.sin(z), Math.cos(z)]
  const along = Math.abs(sinZ) > Math.abs(cosZ) ? 1 : 0
  // a·sin u + b·cos u = c, with u across the lines and v along them.
  const terms = (v: number): readonly [a: number, b: number, c: number] =>
    along === 1
      ? [Math.cos(v), sinZ, -Math.sin(v) * cosZ]
      : [cosZ, Math.sin(v), -sinZ * Math.cos(v)]
  const across = along === 1 ? 0 : 1
  const from = Math.floor((reach.low[along] * scale) / (2 * Math.PI)) - 1
  const to = Math.ceil((reach.high[along] * scale) / (2 * Math.PI)) + 1
  const steps = (to - from) * WAVE_FACETS
  // Each of the two solutions of a period, followed without a jump.
  const branches = [0, 1].map((branch) => {
    let before: number | null = null
    return Array.from({ length: steps + 1 }, (_, i) => {
      const v = 2 * Math.PI * (from + i / WAVE_FACETS)
      const [a, b, c] = terms(v)
      const lean = Math.asin(Math.min(1, Math.max(-1, c / Math.hypot(a, b))))
      let u: number = (branch === 0 ? lean : Math.PI - lean) - Math.atan2(b, a)
      if (before !== null) u += 2 * Math.PI * Math.round((before - u) / (2 * Math.PI))
      before = u
      return [u, v] as const
    })
  })
  const widest = 2 * Math.PI
  const first = Math.floor((reach.low[across] * scale) / (2 * Math.PI)) - 2
  const last = Math.ceil((reach.high[across] * scale) / (2 * Math.PI)) + 2
  const rows: { middle: number; path: Path }[] = []
  for (let k = first; k <= last; k++) {
    for (const branch of branches) {
      const path = branch.map(([u, v]): Point => {
        const [across1, along1] = [(u + k * widest) / scale, v / scale]
        return along === 1 ? [across1, along1] : [along1, across1]
      })
      rows.push({ middle: meanOf(path.map((p) => p[across])), path })
    }
  }
  rows.sort((a, b) => a.middle - b.middle)
  return { along, rows: rows.map(({ path }) => path) }
}

interface GyroidRows {
  readonly along: 0 | 1
  readonly rows: readonly Path[]
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

/**
 * Regular cells: lines along a flat side, then along a slanted one, `spacingMm` apart, neighbours
 * mirrored so that they share the flat sides.
 */
export function honeycombRows(reach: Reach, along: 0 | 1, spacingMm: number): readonly Path[] {
  const across = along === 1 ? 0 : 1
  const sideMm = (2 / Math.sqrt(3)) * spacingMm
  const cells = Math.ceil((reach.high[along] - reach.low[along]) / (3 * sideMm)) + 2
  const rows: Path[] = []
  const first = Math.floor(reach.low[across] / spacingMm) - 1
  for (let k = first; (k - 1) * spacingMm < reach.high[across]; k++) {
    // Off the origin by what no outline is likely to share: sides that lie on an edge are in and
    // out.
    const middle = (k + OFFSET) * spacingMm
    const half = (k % 2 === 0 ? 0.5 : -0.5) * spacingMm
    const path: Point[] = []
    for (let i = -1; i < cells; i++) {
      const start = reach.low[along] + 3 * sideMm * i
      for (const [forward, side] of [
        [0, -1],
        [1, -1],
        [1.5, 1],
        [2.5, 1],
      ] as const) {
        const [u, v] = [middle + side * half, start + forward * sideMm]
        path.push(along === 1 ? [u, v] : [v, u])
      }
    }
    rows.push(path)
  }
  return rows
}

const OFFSET = 0.137

/** Where a line ends on an outline: which one, and how far along it. */
interface EndAt {
  readonly ring: number
  readonly mm: number
}

/** A line from wall to wall, half a line width shorter at either end. */
interface Piece {
  readonly path: Path
  readonly ends: readonly [EndAt, EndAt]
}

/**
 * Rows inside rings by the even-odd rule, joined end to end, see `joinPieces`: begun at the low end
 * of the first, and at its high end.
 */
export function windings(
  rings: Rings,
  rows: readonly Path[],
  across: 0 | 1,
  spacingMm: number,
  lineMm: number,
): readonly [low: Path[], high: Path[]] {
  const edges = edgesOf(rings)
  const pieces = rows.flatMap((row) => clipRow(edges, row, across, lineMm))
  const join = (startHigh: boolean): Path[] =>
    joinPieces(pieces, rings.map(lengthOf), FURTHEST_STEP * spacingMm, startHigh)
  return [join(false), join(true)]
}

/** A way along the wall of more spacings than this is a lift, not a line. */
const FURTHEST_STEP = 3

interface Edge {
  readonly p: Point
  readonly q: Point
  readonly ring: number
  /** Along the ring at p. */
  readonly mm: number
}

function edgesOf(rings: Rings): Edge[] {
  return rings.flatMap((points, ring) => {
    let mm = 0
    return points.map((p, i) => {
      const q = points[(i + 1) % points.length]!
      const edge = { p, q, ring, mm }
      mm += distance(p, q)
      return edge
    })
  })
}

const lengthOf = (ring: Path): number =>
  ring.reduce((sum, p, i) => sum + distance(p, ring[(i + 1) % ring.length]!), 0)

const distance = (p: Point, q: Point): number => Math.hypot(p[0] - q[0], p[1] - q[1])

function clipRow(edges: readonly Edge[], row: Path, across: 0 | 1, lineMm: number): Piece[] {
  const values = row.map((p) => p[across])
  const [low, high] = [Math.min(...values), Math.max(...values)]
  const near = edges.filter(
    ({ p, q }) => Math.max(p[across], q[across]) >= low && Math.min(p[across], q[across]) <= high,
  )
  const pieces: Piece[] = []
  let open: { path: Point[]; from: EndAt } | null = null
  for (let i = 0; i + 1 < row.length; i++) {
    const [a, b] = [row[i]!, row[i + 1]!]
    for (const { t, end } of hitsOf(a, b, near)) {
      const hit: Point = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
      if (open === null) {
        open = { path: [hit], from: end }
        continue
      }
      const path = trimmed([...open.path, hit], lineMm / 2)
      if (path.length > 1) pieces.push({ path, ends: [open.from, end] })
      open = null
    }
    open?.path.push(b)
  }
  if (open !== null) throw new Error('A line of infill ends inside its room.')
  return pieces
}

/**
 * One line after another, each begun at the free end that lies nearest along the wall; where none
 * lies near, a new path begins with the first line left, at its low end or its high one.
 */
function joinPieces(
  pieces: readonly Piece[],
  ringsMm: readonly number[],
  furthestMm: number,
  startHigh: boolean,
): Path[] {
  const paths: Path[] = []
  let left = [...pieces]
  let open: Point[] | null = null
  let here: EndAt | null = null
  while (left.length > 0) {
    let best = { piece: left[0]!, end: startHigh ? 1 : 0, mm: Infinity }
    for (const piece of here === null ? [] : left) {
      piece.ends.forEach((at, end) => {
        const mm = alongWall(here!, at, ringsMm)
        if (mm < best.mm) best = { piece, end, mm }
      })
    }
    const { piece, end, mm } = best
    const path = end === 0 ? piece.path : piece.path.toReversed()
    if (open !== null && mm <= furthestMm) {
      open.push(...path)
    } else {
      if (open !== null) paths.push(open)
      if (mm > furthestMm && here !== null) {
        // Begin anew with the first that is left.
        here = null
        open = null
        continue
      }
      open = [...path]
    }
    here = piece.ends[1 - end]!
    left = left.filter((one) => one !== piece)
  }
  return open === null ? paths : [...paths, open]
}

function alongWall(a: EndAt, b: EndAt, ringsMm: readonly number[]): number {
  if (a.ring !== b.ring) return Infinity
  const mm = Math.abs(a.mm - b.mm)
  return Math.min(mm, ringsMm[a.ring]! - mm)
}

/** Where a move crosses edges, in its order (0–1). */
function hitsOf(a: Point, b: Point, edges: readonly Edge[]): { t: number; end: EndAt }[] {
  const hits: { t: number; end: EndAt }[] = []
  for (const { p, q, ring, mm } of edges) {
    const sideP = sideOf(a, b, p)
    const sideQ = sideOf(a, b, q)
    if (sideP > 0 === sideQ > 0) continue
    const from = sideOf(p, q, a)
    const to = sideOf(p, q, b)
    if (from > 0 === to > 0) continue
    const along = sideP / (sideP - sideQ)
    hits.push({ t: from / (from - to), end: { ring, mm: mm + along * distance(p, q) } })
  }
  return hits.sort((one, other) => one.t - other.t)
}

const sideOf = (a: Point, b: Point, p: Point): number =>
  (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])

/** A path so much shorter at either end; nothing where it is no longer than that. */
const trimmed = (path: Path, mm: number): Path =>
  without(without(path, mm).toReversed(), mm).toReversed()

function without(path: Path, mm: number): Path {
  let left = mm
  for (let i = 0; i + 1 < path.length; i++) {
    const [a, b] = [path[i]!, path[i + 1]!]
    const length = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (length > left) {
      const t = left / length
      return [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], ...path.slice(i + 1)]
    }
    left -= length
  }
  return []
}
