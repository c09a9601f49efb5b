import type { Spot } from '../model/runs.ts'
import { emptyGrid, highestSpot, lowestSpot, occupyCells, type BedGrid } from './bedGrid.ts'
import { BED_CELL_MM } from './stamp.ts'
import type { Stamp } from './types.ts'

/** One piece to lay, with every turn it is tried at. */
export interface TurnedPiece {
  readonly partId: string
  readonly mirrored: boolean
  readonly stamps: readonly Stamp[]
}

/**
 * Which of the free places is taken: the one whose top lies lowest, the one that widens the used
 * corner least, or in turns the highest and the lowest, which lets long pieces pass on a diagonal.
 */
export type Rule = 'low' | 'corner' | 'ends'

/** Whether a piece may join those on a bed; asked with the places they would have. */
export type Joins = (spots: readonly Spot[]) => boolean

interface OpenBed {
  readonly grid: BedGrid
  readonly spots: Spot[]
  /**
   * Below this row a stamp was found to lie nowhere; beds only fill, so it need not be looked for
   * there again.
   */
  readonly from: Map<Stamp, number>
  usedX: number
  usedY: number
}

/**
 * Lays pieces one by one on the first bed that takes them, each bottom-left at its best turn; spots
 * count from the least corner of the usable bed. A piece that only an exact fit takes lies alone.
 *
 * @returns null as soon as there are more than `mostBeds`.
 */
export function layPieces(
  pieces: readonly TurnedPiece[],
  usableMm: readonly [number, number],
  gapMm: number,
  rule: Rule,
  joins: Joins,
  mostBeds = Infinity,
): readonly (readonly Spot[])[] | null {
  const beds: OpenBed[] = []
  for (const piece of pieces) {
    if (beds.some((bed) => laidOn(bed, piece, gapMm, rule, joins))) continue
    if (beds.length >= mostBeds) return null
    const fresh = {
      grid: emptyGrid(usableMm),
      spots: [],
      from: new Map<Stamp, number>(),
      usedX: 0,
      usedY: 0,
    }
    if (!laidOn(fresh, piece, gapMm, rule, () => true)) layAlone(fresh, piece, usableMm)
    beds.push(fresh)
  }
  return beds.map(({ spots }) => spots)
}

function laidOn(
  bed: OpenBed,
  { partId, mirrored, stamps }: TurnedPiece,
  gapMm: number,
  rule: Rule,
  joins: Joins,
): boolean {
  let best: { stamp: Stamp; x: number; y: number } | null = null
  let least = Infinity
  const fromTop = rule === 'ends' && bed.spots.length % 2 === 0
  for (const stamp of stamps) {
    if (fromTop) {
      // How far its foot is from the far edge.
      const leastY = Math.max(bed.from.get(stamp) ?? 0, bed.grid.down - Math.ceil(least))
      const spot = highestSpot(bed.grid, stamp, leastY)
      const cost =
        spot === null ? Infinity : bed.grid.down - spot[1] + (spot[0] + stamp.across) * 1e-4
      if (spot !== null && cost < least) [least, best] = [cost, { stamp, x: spot[0], y: spot[1] }]
      continue
    }
    const leastY = bed.from.get(stamp) ?? 0
    // Only what costs less is worth looking for.
    const mostTop = rule !== 'corner' ? least : least / Math.max(bed.usedX, stamp.across)
    const mostY = Math.min(bed.grid.down, Math.ceil(mostTop)) - stamp.down
    const spot = lowestSpot(bed.grid, stamp, leastY, mostY)
    bed.from.set(stamp, Math.max(leastY, spot === null ? mostY + 1 : spot[1]))
    if (spot === null) continue
    const [x, y] = spot
    const right = Math.max(bed.usedX, x + stamp.across)
    const top = Math.max(bed.usedY, y + stamp.down)
    const cost =
      rule !== 'corner' ? y + stamp.down + (x + stamp.across) * 1e-4 : right * top + (x + y) * 1e-4
    if (cost < least) {
      least = cost
      best = { stamp, x, y }
    }
  }
  if (best === null) return false
  const { stamp, x, y } = best
  const spot = {
    partId,
    xMm: x * BED_CELL_MM + stamp.originMm[0],
    yMm: y * BED_CELL_MM + stamp.originMm[1],
    turnDeg: stamp.turnDeg,
    ...(mirrored ? { mirrored } : {}),
  }
  if (!joins([...bed.spots, spot])) return false
  occupyCells(bed.grid, stamp, x, y, gapMm)
  bed.spots.push(spot)
  bed.usedX = Math.max(bed.usedX, x + stamp.across)
  bed.usedY = Math.max(bed.usedY, y + stamp.down)
  return true
}

/** In the middle; nothing else goes beside it. */
function layAlone(
  bed: OpenBed,
  { partId, mirrored, stamps }: TurnedPiece,
  usableMm: readonly [number, number],
): void {
  const stamp = stamps[0]
  if (stamp === undefined) return
  const place = (k: 0 | 1): number => (usableMm[k] - stamp.sizeMm[k]) / 2 + stamp.originMm[k]
  bed.spots.push({
    partId,
    xMm: place(0),
    yMm: place(1),
    turnDeg: stamp.turnDeg,
    ...(mirrored ? { mirrored } : {}),
  })
  bed.grid.isBare.fill(0)
  for (const level of bed.grid.levels) level.fill(0xffffffff)
}
