import { layingErrors, spoolErrors } from '../doubt/factors.ts'
import { COVERAGE } from '../doubt/bell.ts'
import type { Material } from '../model/figures.ts'
import type { Deposit } from './deposit.ts'
import { massOfG, plasticMm3 } from './mass.ts'

/**
 * Share of a part's grams that its walls alone are sure to weigh, with what they may be off by
 * themselves: `wallsLess` for habits and `count` for the count, shares that hold 95 % of cases.
 * Habits that only add, like a room laid sparse that others lay solid, are bells in the sum of
 * errors, as far down as up, and could else take away walls.
 */
export function leastShare(
  { wallMm3 }: Pick<Deposit, 'wallMm3'>,
  massG: number,
  wallsLess: number,
  count: number,
  material: Material,
  printerId: string,
): number {
  if (!(massG > 0) || !(wallMm3 > 0)) return 0
  let squares = wallsLess ** 2 + count ** 2
  for (const { effect } of spoolErrors(material)) squares += (COVERAGE * effect) ** 2
  for (const { effect } of layingErrors(printerId, material, 1)) squares += (COVERAGE * effect) ** 2
  const wallsG = massOfG(plasticMm3(wallMm3, 1, material), material)
  return Math.min(1, (wallsG / massG) * Math.max(0, 1 - Math.sqrt(squares)))
}
