import type { Vec3 } from '../../model/mesh.ts'
import type { WholeHole } from './wholeHoles.ts'

export type Lies = 'upright' | 'level' | 'slanted'

/**
 * Holes of one part that are alike, in the order of their numbers: `2.1`, `2.2`, … or `2` alone.
 */
export interface NumberedHoles<H> {
  /** From 1. */
  readonly group: number
  readonly lies: Lies
  readonly holes: readonly { readonly number: string; readonly hole: H }[]
}

/** Diameters this near are one. mm */
const SAME_MM = 0.05
/** Sine of what still counts as upright or level. */
const LEAN = Math.sin((5 * Math.PI) / 180)
/** Holes in a row by x, then y; two that differ by less stand in one line. mm */
const ROW_MM = 0.05

/**
 * Numbers the holes of a part, which drawing, drill list and command share: alike ones together,
 * the most numerous first, then the widest. `placed` gives where a hole lies in the part's pose, up
 * to a shift.
 */
export function numberHoles<H extends WholeHole>(
  holes: readonly H[],
  placed: (hole: H) => { readonly axis: Vec3; readonly centreMm: Vec3 },
): readonly NumberedHoles<H>[] {
  const groups = new Map<string, H[]>()
  for (const hole of holes) {
    const key = `${hole.shape} ${sizeOf(hole.diameterMm)} ${sizeOf(hole.stretchMm)} ${isThrough(hole)}
      ${liesOf(placed(hole).axis)} ${seatsOf(hole)}`
    const known = groups.get(key)
    if (known === undefined) groups.set(key, [hole])
    else known.push(hole)
  }
  return [...groups.values()]
    .toSorted((a, b) => b.length - a.length || b[0]!.diameterMm - a[0]!.diameterMm)
    .map((own, i) => {
      const group = i + 1
      const rows = own
        .map((hole) => ({ hole, at: placed(hole).centreMm }))
        .toSorted((a, b) => {
          const dx = a.at[0] - b.at[0]
          const dy = a.at[1] - b.at[1]
          return Math.abs(dx) > ROW_MM ? dx : Math.abs(dy) > ROW_MM ? dy : a.at[2] - b.at[2]
        })
      return {
        group,
        lies: liesOf(placed(own[0]!).axis),
        holes: rows.map(({ hole }, k) => {
          return { hole, number: rows.length === 1 ? `${group}` : `${group}.${k + 1}` }
        }),
      }
    })
}

export const isThrough = ({ openLow, openHigh }: WholeHole): boolean => openLow && openHigh

function liesOf(axis: Vec3): Lies {
  const upright = Math.abs(axis[2])
  return upright > Math.sqrt(1 - LEAN * LEAN) ? 'upright' : upright < LEAN ? 'level' : 'slanted'
}

const sizeOf = (mm: number): number => Math.round(mm / SAME_MM)

function seatsOf({ seats }: WholeHole): string {
  return seats
    .map(({ kind, diameterMm }) => `${kind} ${sizeOf(diameterMm)}`)
    .toSorted()
    .join(' ')
}
