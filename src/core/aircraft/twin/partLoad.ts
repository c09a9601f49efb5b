import type { Aircraft } from '../../model/aircraft.ts'
import type { Part } from '../../model/frame.ts'
import type { BoreMark } from '../../model/joints.ts'
import { GRAVITY } from '../flight/air.ts'
import { hoveringSetup } from '../report/hoveringSetup.ts'
import { tipMassG } from './armShake.ts'

/** What a part has to take, as far as the aircraft says. */
export interface PartLoad {
  readonly loadN: number
  /** What sits where it is pushed. g */
  readonly tipG: number
  readonly from: 'motor' | 'plain'
}

/** A load to compare parts by where nothing is known: about one kilogram. N */
const PLAIN_N = 10

/**
 * An arm takes its motor's full throttle and swings with what sits at its end; others a plain load.
 */
export function partLoad({ role }: Pick<Part, 'role'>, aircraft: Aircraft): PartLoad {
  const flight = role === 'arm' ? hoveringSetup(aircraft) : null
  const loadN = ((flight?.motorThrustG ?? 0) / 1000) * GRAVITY
  if (flight === null || !(loadN > 0)) return { loadN: PLAIN_N, tipG: 0, from: 'plain' }
  return { loadN, tipG: tipMassG(aircraft.items, flight.motors), from: 'motor' }
}

/**
 * The bores of its joints: the pieces of a part share them, so that each is told once. mm as drawn
 */
export function jointBoresOf(partId: string, { joints }: Pick<Aircraft, 'joints'>): BoreMark[] {
  const bores = new Map<string, BoreMark>()
  for (const { a, b } of joints) {
    for (const end of [a, b]) {
      if (end.partId !== partId) continue
      for (const bore of end.bores)
        bores.set(bore.centreMm.map((at) => at.toFixed(2)).join(' '), bore)
    }
  }
  return [...bores.values()]
}
