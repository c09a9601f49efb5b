import type { Part } from '../../model/frame.ts'
import type { InsertPrint } from './stack.ts'

/**
 * How a part is printed round an insert: its densest zone is taken to lie there, that is what it is
 * drawn for.
 */
export function insertPrint({ recipe, zones }: Pick<Part, 'recipe' | 'zones'>): InsertPrint {
  const { walls, lineMm, infillPct } = recipe
  const densestPct = Math.max(infillPct, ...zones.map((zone) => zone.infillPct))
  return { walls, lineMm, infillPct: densestPct }
}
