/** Points of one line or loop, mm. */
export type Path = readonly (readonly [x: number, y: number])[]

/** Closed outlines as point lists; holes run the other way round. */
export type Rings = readonly Path[]

/**
 * The stretches of parallel lines inside rings, by the even-odd rule, one list a line. `along` 0:
 * lines run along x, spaced in y; 1: along y. Plain and slow.
 */
function clipLines(
  rings: Rings,
  along: 0 | 1,
  spacingMm: number,
  phase: number,
): { at: number; spans: [number, number][] }[] {
  const across = 1 - along
  const values = rings.flat().map((p) => p[across]!)
  const low = Math.min(...values)
  const high = Math.max(...values)
  const lines: { at: number; spans: [number, number][] }[] = []
  for (let at = low + phase * spacingMm; at < high; at += spacingMm) {
    const hits: number[] = []
    for (const ring of rings) {
      ring.forEach((p, i) => {
        const q = ring[(i + 1) % ring.length]!
        if (p[across]! <= at === q[across]! <= at) return
        const t = (at - p[across]!) / (q[across]! - p[across]!)
        hits.push(p[along] + t * (q[along] - p[along]))
      })
    }
    hits.sort((a, b) => a - b)
    const spans: [number, number][] = []
    for (let i = 0; i + 1 < hits.length; i += 2) spans.push([hits[i]!, hits[i + 1]!])
    lines.push({ at, spans })
  }
  return lines
}

/**
 * Lays the lines back and forth; a zigzag goes on to one line of the next row that it overlaps and
 * nothing else took. A new one begins at the low end of its first line, or at its high end. Lines end
 * half a line width short of the edge; shorter than a line width there is nothing to lay.
 */
export function zigzags(
  rings: Rings,
  along: 0 | 1,
  spacingMm: number,
  lineMm: number,
  phase = 0.5,
): readonly [low: Path[], high: Path[]] {
  if (rings.length === 0) return [[], []]
  const lines = clipLines(rings, along, spacingMm, phase)
  const join = (startHigh: boolean): Path[] =>
    backAndForth(lines, along, spacingMm, lineMm, startHigh)
  return [join(false), join(true)]
}

function backAndForth(
  lines: ReturnType<typeof clipLines>,
  along: 0 | 1,
  spacingMm: number,
  lineMm: number,
  startHigh: boolean,
): Path[] {
  const done: [number, number][][] = []
  let open: { span: [number, number]; path: [number, number][] }[] = []
  for (const { at, spans } of lines) {
    const next: typeof open = []
    for (const [low, high] of spans) {
      const span: [number, number] = [low + lineMm / 2, high - lineMm / 2]
      if (span[1] <= span[0]) continue
      const i = nearestChain(open, span, along)
      const chain = i >= 0 ? open.splice(i, 1)[0]! : { span, path: [] }
      const last = chain.path.at(-1)
      const lastAlong = last ? last[along] : startHigh ? span[1] : span[0]
      const forward = Math.abs(lastAlong - span[0]) <= Math.abs(lastAlong - span[1])
      const [from, to] = forward ? span : [span[1], span[0]]
      if (last && Math.abs(from - lastAlong) > FURTHEST_STEP * spacingMm) {
        done.push(chain.path)
        chain.path = []
      }
      const point = (u: number): [number, number] => (along === 0 ? [u, at] : [at, u])
      chain.path.push(point(from), point(to))
      chain.span = span
      next.push(chain)
    }
    done.push(...open.map((chain) => chain.path))
    open = next
  }
  return [...done, ...open.map((chain) => chain.path)]
}

/** A step further sideways than this many spacings is a lift, not a line. */
const FURTHEST_STEP = 3

/**
 * The open zigzag that overlaps the span and ends nearest to one of its ends; −1 where none does.
 */
function nearestChain(
  open: readonly { span: [number, number]; path: [number, number][] }[],
  span: [number, number],
  along: 0 | 1,
): number {
  let best = -1
  let bestMm = Infinity
  open.forEach((chain, i) => {
    if (chain.span[0] >= span[1] || span[0] >= chain.span[1]) return
    const end = chain.path.at(-1)![along]
    const mm = Math.min(Math.abs(end - span[0]), Math.abs(end - span[1]))
    if (mm < bestMm) {
      best = i
      bestMm = mm
    }
  })
  return best
}

export const pathLength = (path: Path): number =>
  path.reduce(
    (sum, p, i) => (i === 0 ? 0 : sum + Math.hypot(p[0] - path[i - 1]![0], p[1] - path[i - 1]![1])),
    0,
  )

/** Corners where a loop's seam is hidden well: those at least 0.8 as sharp as its sharpest. */
export function seamCorners(ring: Path): number[] {
  const n = ring.length
  const turns = ring.map((q, i) => halfTurnSine(ring[(i + n - 1) % n]!, q, ring[(i + 1) % n]!))
  const enough = 0.8 * Math.max(...turns)
  return turns.flatMap((turn, i) => (turn >= enough ? [i] : []))
}

/** A loop as a path that starts and ends at one of its corners. */
export const loopFrom = (ring: Path, seam: number): Path => [
  ...ring.slice(seam),
  ...ring.slice(0, seam),
  ring[seam]!,
]

/** sin(half the turn) at q on the way from p to r. */
export function halfTurnSine(
  p: readonly [number, number],
  q: readonly [number, number],
  r: readonly [number, number],
): number {
  const a = [q[0] - p[0], q[1] - p[1]] as const
  const b = [r[0] - q[0], r[1] - q[1]] as const
  const sizes = Math.hypot(...a) * Math.hypot(...b)
  return Math.sqrt(Math.max(0, (1 - (a[0] * b[0] + a[1] * b[1]) / (sizes || 1)) / 2))
}
