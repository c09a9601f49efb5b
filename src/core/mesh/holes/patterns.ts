import type { Vec3 } from '../../model/mesh.ts'
import { minus } from '../../model/vectors.ts'
import type { Hole } from './findHoles.ts'
import { flatAxes } from './fitCircle.ts'
import { isOneAxis, offAxis } from './oneAxis.ts'

/** What a pattern asks of a hole. */
export type Bored = Pick<Hole, 'axis' | 'centre' | 'diameter'>

/** A mounting pattern of four holes. Trade practice, no standards body. */
interface Pattern {
  /** Sides of the rectangle, or distances across a cross, mm. */
  readonly aMm: number
  readonly bMm: number
  readonly layout: 'rectangle' | 'cross'
  readonly use: string
}

/**
 * 30.5, 20 and 16 squares for flight controllers and 16 for motors were read in board and motor
 * descriptions; 9, 12, 19, 25.5, 16 × 19, 19 × 25 and motor holes counted across the circle are
 * from memory, so they suggest and decide nothing.
 */
export const PATTERNS: readonly Pattern[] = [
  ...[9, 12, 16, 19].map((side) => pattern(side, side, 'rectangle', 'motor')),
  pattern(16, 19, 'rectangle', 'motor'),
  pattern(19, 25, 'rectangle', 'motor'),
  ...[20, 25.5, 30.5].map((side) => pattern(side, side, 'rectangle', 'flight controller')),
  ...[9, 12, 16, 19].map((side) => pattern(side, side, 'cross', 'motor')),
  pattern(16, 19, 'cross', 'motor'),
  pattern(19, 25, 'cross', 'motor'),
]

function pattern(aMm: number, bMm: number, layout: Pattern['layout'], use: string): Pattern {
  return { aMm, bMm, layout, use }
}

/**
 * What a pattern is called where it is chosen: the sides of a rectangle, or the circle that its
 * holes stand on.
 */
export function patternName({ aMm, bMm, layout }: Pick<Pattern, 'aMm' | 'bMm' | 'layout'>): string {
  if (layout === 'rectangle') return `${aMm} × ${bMm}`
  return aMm === bMm ? `circle of ${aMm}` : `cross of ${aMm} × ${bMm}`
}

export const PATTERN_NAMES: readonly string[] = PATTERNS.map(patternName)

/** A distance between holes may be off by this much and still be meant. mm */
const TOLERANCE_MM = 0.15
/** The four holes of a pattern are drawn alike, within this. mm */
const SAME_SIZE_MM = 0.15
/** Grilles of more holes than this are not searched. */
const MOST_HOLES = 150

export interface FoundPattern extends Pattern {
  /** Such as “30.5 × 30.5”. */
  readonly name: string
  readonly holeMm: number
  /** Through the four centres, mm. */
  readonly circleMm: number
  /** The holes' places in the list that was given. */
  readonly holes: readonly number[]
}

/**
 * Finds four equal parallel holes that stand in a known pattern. `mm` turns the holes' unit into
 * mm.
 */
export function findPatterns(holes: readonly Bored[], mm: number): readonly FoundPattern[] {
  if (holes.length > MOST_HOLES) return []
  const found: FoundPattern[] = []
  for (const group of parallelGroups(holes)) {
    const points = group.map((index) => flatten(holes[index]!, holes[group[0]!]!.axis, index, mm))
    const seen = new Set<string>()
    for (const p of points) {
      for (const q of points) {
        if (q === p || Math.abs(q.sizeMm - p.sizeMm) > SAME_SIZE_MM) continue
        for (const each of PATTERNS) {
          const others = complete(each, p, q, points)
          if (others === null) continue
          const four = [p.index, q.index, ...others].sort((a, b) => a - b)
          const key = four.join(' ')
          if (seen.has(key)) continue
          seen.add(key)
          const circleMm = each.layout === 'cross' ? each.bMm : Math.hypot(each.aMm, each.bMm)
          const name = `${each.aMm} × ${each.bMm}`
          found.push({ ...each, name, holeMm: p.sizeMm, circleMm, holes: four })
        }
      }
    }
  }
  return found
}

interface Point {
  readonly index: number
  readonly x: number
  readonly y: number
  readonly sizeMm: number
}

function flatten({ centre, diameter }: Bored, axis: Vec3, index: number, mm: number): Point {
  const { right, up } = flatAxes(axis)
  const along = (to: Vec3) => mm * (centre[0] * to[0] + centre[1] * to[1] + centre[2] * to[2])
  return { index, x: along(right), y: along(up), sizeMm: diameter * mm }
}

/** Places of the holes by direction; one above another on the same axis counts once. */
function parallelGroups(holes: readonly Bored[]): readonly (readonly number[])[] {
  const groups: number[][] = []
  holes.forEach(({ axis, centre, diameter }, index) => {
    const group = groups.find((each) => isOneAxis(axis, holes[each[0]!]!.axis))
    if (group === undefined) {
      groups.push([index])
      return
    }
    const above = group.some((each) => {
      const other = holes[each]!
      const off = offAxis(minus(centre, other.centre), axis)
      return off < 0.05 * diameter && Math.abs(diameter - other.diameter) < 0.05 * diameter
    })
    if (!above) group.push(index)
  })
  return groups.filter((group) => group.length >= 4)
}

/** The two holes that make p–q a pattern: p–q is its side a, or the distance a across a cross. */
function complete(
  { aMm, bMm, layout }: Pattern,
  p: Point,
  q: Point,
  points: readonly Point[],
): readonly [number, number] | null {
  const dx = q.x - p.x
  const dy = q.y - p.y
  const length = Math.hypot(dx, dy)
  if (Math.abs(length - aMm) > TOLERANCE_MM) return null
  const [nx, ny] = [-dy / length, dx / length]
  const find = (x: number, y: number) =>
    points.find(
      (each) =>
        Math.abs(each.sizeMm - p.sizeMm) <= SAME_SIZE_MM &&
        Math.hypot(each.x - x, each.y - y) <= 2 * TOLERANCE_MM,
    )
  if (layout === 'rectangle') {
    const r = find(q.x + nx * bMm, q.y + ny * bMm)
    const s = find(p.x + nx * bMm, p.y + ny * bMm)
    if (r === undefined || s === undefined) return null
    if (!near(q, r, bMm) || !near(r, s, aMm) || !near(s, p, bMm)) return null
    return [r.index, s.index]
  }
  const [mx, my] = [(p.x + q.x) / 2, (p.y + q.y) / 2]
  const r = find(mx + (nx * bMm) / 2, my + (ny * bMm) / 2)
  const s = find(mx - (nx * bMm) / 2, my - (ny * bMm) / 2)
  if (r === undefined || s === undefined || !near(r, s, bMm)) return null
  return [r.index, s.index]
}

const near = (a: Point, b: Point, mm: number): boolean =>
  Math.abs(Math.hypot(a.x - b.x, a.y - b.y) - mm) <= TOLERANCE_MM
