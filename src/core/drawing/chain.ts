/** Ends this near are one point. px */
const GRID_PX = 0.06
/** Points this near to the line past them are left out. px */
const TOLERANCE_PX = 0.12

/**
 * Joins loose stretches (x, y of both ends; stride 4) end to end into as few lines as a greedy walk
 * finds, drops what lies on the way, and writes them as SVG path data. At a fork the walk goes
 * straightest on.
 */
export function chainPath(stretches: readonly number[]): string {
  return joinStretches(stretches)
    .map((line) => pathOf(simplifyLine(line, TOLERANCE_PX), false))
    .join('')
}

/** Lines as x, y a point. */
function joinStretches(stretches: readonly number[]): readonly number[][] {
  const count = stretches.length / 4
  const ends = new Map<number, number[]>()
  for (let s = 0; s < count; s++) {
    for (let end = 0; end < 2; end++) {
      const key = keyOf(stretches[4 * s + 2 * end]!, stretches[4 * s + 2 * end + 1]!)
      const list = ends.get(key)
      if (list === undefined) ends.set(key, [2 * s + end])
      else list.push(2 * s + end)
    }
  }
  const used = new Uint8Array(count)
  const lines: number[][] = []
  for (let s = 0; s < count; s++) {
    if (used[s] === 1) continue
    used[s] = 1
    const forth = walk(stretches, ends, used, s, 1)
    const back = walk(stretches, ends, used, s, 0)
    const line: number[] = []
    for (let i = back.length - 2; i >= 0; i -= 2) line.push(back[i]!, back[i + 1]!)
    line.push(...forth)
    lines.push(line)
  }
  return lines
}

/** Points from one end of stretch `s` (0 its first, 1 its second) onwards, that end included. */
function walk(
  stretches: readonly number[],
  ends: ReadonlyMap<number, readonly number[]>,
  used: Uint8Array,
  s: number,
  end: 0 | 1,
): number[] {
  const points: number[] = []
  let x = stretches[4 * s + 2 * end]!
  let y = stretches[4 * s + 2 * end + 1]!
  let dx = x - stretches[4 * s + 2 - 2 * end]!
  let dy = y - stretches[4 * s + 3 - 2 * end]!
  for (;;) {
    points.push(x, y)
    let best = -1
    let bestCos = -0.2
    for (const candidate of ends.get(keyOf(x, y)) ?? []) {
      const other = candidate >> 1
      if (used[other] === 1) continue
      const far = 4 * other + 2 - 2 * (candidate & 1)
      const fx = stretches[far]! - x
      const fy = stretches[far + 1]! - y
      const cos = (dx * fx + dy * fy) / (Math.hypot(dx, dy) * Math.hypot(fx, fy) || 1)
      if (cos > bestCos) {
        best = candidate
        bestCos = cos
      }
    }
    if (best < 0) return points
    used[best >> 1] = 1
    const far = 4 * (best >> 1) + 2 - 2 * (best & 1)
    dx = stretches[far]! - x
    dy = stretches[far + 1]! - y
    x = stretches[far]!
    y = stretches[far + 1]!
  }
}

const keyOf = (x: number, y: number): number =>
  Math.round(x / GRID_PX) * 4_194_304 + Math.round(y / GRID_PX)

/** Douglas and Peucker's rule, without recursion. x, y a point. */
export function simplifyLine(points: readonly number[], tolerance: number): number[] {
  const count = points.length / 2
  const keep = new Uint8Array(count)
  keep[0] = 1
  keep[count - 1] = 1
  const stack: [number, number][] = [[0, count - 1]]
  for (let next = stack.pop(); next !== undefined; next = stack.pop()) {
    const [a, b] = next
    let far = -1
    let farthest = tolerance
    for (let i = a + 1; i < b; i++) {
      const off = distance(points, i, a, b)
      if (off > farthest) {
        far = i
        farthest = off
      }
    }
    if (far < 0) continue
    keep[far] = 1
    stack.push([a, far], [far, b])
  }
  const kept: number[] = []
  for (let i = 0; i < count; i++) if (keep[i] === 1) kept.push(points[2 * i]!, points[2 * i + 1]!)
  return kept
}

/** Of point i from the stretch a–b. */
function distance(p: readonly number[], i: number, a: number, b: number): number {
  const ax = p[2 * a]!
  const ay = p[2 * a + 1]!
  const ux = p[2 * b]! - ax
  const uy = p[2 * b + 1]! - ay
  const vx = p[2 * i]! - ax
  const vy = p[2 * i + 1]! - ay
  const length2 = ux * ux + uy * uy
  const f = length2 === 0 ? 0 : Math.min(1, Math.max(0, (ux * vx + uy * vy) / length2))
  return Math.hypot(vx - f * ux, vy - f * uy)
}

/** SVG path data to a tenth of a px. */
export function pathOf(points: readonly number[], isClosed: boolean): string {
  let text = ''
  for (let i = 0; i + 1 < points.length; i += 2) {
    text += `${i === 0 ? 'M' : 'L'}${tenth(points[i]!)} ${tenth(points[i + 1]!)}`
  }
  return isClosed ? `${text}Z` : text
}

const tenth = (value: number): number => Math.round(value * 10) / 10
