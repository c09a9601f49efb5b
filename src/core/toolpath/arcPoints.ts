type Point = readonly [x: number, y: number]

/**
 * Where the middle of an arc lies: from its start (I, J), or by its radius (R; negative: the long
 * way).
 */
interface ArcCentre {
  readonly i: number
  readonly j: number
  readonly r: number
}

/** No arc is cut finer. */
const MOST_CHORDS = 720

/**
 * Ends of the chords along an arc from `from` to `to` (G2 and G3 of ISO 6983-1), the last of them
 * `to`; a whole circle where both are one. Chords stray from the arc by at most `strayMm`. What
 * describes no arc is one straight move.
 */
export function arcPoints(
  from: Point,
  to: Point,
  centre: ArcCentre,
  clockwise: boolean,
  strayMm: number,
): readonly Point[] {
  const middle = middleOf(from, to, centre, clockwise)
  if (middle === null) return [to]
  const radius = Math.hypot(from[0] - middle[0], from[1] - middle[1])
  if (!(radius > 0)) return [to]
  const start = Math.atan2(from[1] - middle[1], from[0] - middle[0])
  const end = Math.atan2(to[1] - middle[1], to[0] - middle[0])
  let sweep = clockwise ? start - end : end - start
  if (sweep <= 1e-9) sweep += 2 * Math.PI
  const step = 2 * Math.acos(Math.max(0, 1 - strayMm / radius))
  const count = Math.min(MOST_CHORDS, Math.max(1, Math.ceil(sweep / step)))
  const points: Point[] = []
  for (let k = 1; k < count; k++) {
    const angle = start + ((clockwise ? -1 : 1) * sweep * k) / count
    points.push([middle[0] + radius * Math.cos(angle), middle[1] + radius * Math.sin(angle)])
  }
  points.push(to)
  return points
}

function middleOf(
  from: Point,
  to: Point,
  { i, j, r }: ArcCentre,
  clockwise: boolean,
): Point | null {
  if (!Number.isNaN(i) || !Number.isNaN(j)) return [from[0] + (i || 0), from[1] + (j || 0)]
  if (Number.isNaN(r)) return null
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const chord = Math.hypot(dx, dy)
  if (chord === 0 || chord > 2 * Math.abs(r) * 1.001) return null
  const off = Math.sqrt(Math.max(0, r * r - (chord * chord) / 4))
  const side = clockwise === r > 0 ? -1 : 1
  return [
    (from[0] + to[0]) / 2 - (side * off * dy) / chord,
    (from[1] + to[1]) / 2 + (side * off * dx) / chord,
  ]
}
