import { scaleNoiseG } from '../doubt/readings.ts'
import type { DoubtLine } from '../doubt/lines.ts'
import type { Item } from '../model/aircraft.ts'

/**
 * How far the mass of an item may be off, as a share that holds 95 % of cases, by how it is known;
 * a maker's figure typed in counts as calculated (common practice, no source).
 */
const ITEM_SHARE = { published: 0.05, computed: 0.12, memory: 0.3 } as const
const TYPED_SHARE = { estimated: 0.1, calculated: 0.05 } as const
/** How far bought pieces of one kind differ, one deviation (common practice, no source). */
const SCATTER = 0.0025
/** Scales show tenths unless somebody says otherwise (common practice, no source). */
export const SCALE_STEP_G = 0.1

/** A bought item as the model of doubt has it: its pieces share its error, weighed or not. */
export function itemLine({ id, name, quantity, massG, status, basis }: Item): DoubtLine {
  let own = 0
  if (status !== 'weighed') own = (basis === 'typed' ? TYPED_SHARE[status] : ITEM_SHARE[basis]) / 2
  else if (massG > 0) own = scaleNoiseG(massG, SCALE_STEP_G, false) / massG
  return { id, name, quantity, each: massG, doubt: { shared: [], own }, scatter: SCATTER }
}
