import type { FigureDoubt } from '../model/doubt.ts'
import type { Material } from '../model/figures.ts'
import { errorId } from './errorId.ts'

/**
 * Young's modulus of a printed plastic: makers' own bars of one plastic spread by 2 to 8 %, and
 * spool, heat and water of another print by more (±20 %, common practice, no source).
 */
const MODULUS = 0.2
/**
 * After a knock: what is left beside what the hold is unsure by, 0.2 · 0.075 / √(0.1² + 0.075²).
 */
const KNOCKED = 0.12
/** How a modulus that a knock taught names its source. */
export const KNOCK_SOURCE = 'knock test of'
/**
 * What else a deflection is off by: how firmly the part is really held, how its infill is laid,
 * cells instead of lines (ours).
 */
const HOLDING = 0.15
/**
 * Strength across the layers scatters from print to print more than anything else (±30 %, common
 * practice, no source; the bars of one maker, made alike, by 1 to 8 %).
 */
const BOND = 0.3

type StiffPlastic = Pick<Material, 'id' | 'name' | 'youngsGPa'>

/**
 * How far a stiffness of a part of this plastic may be off; a deflection by as much the other way.
 */
export function stiffnessDoubt({ id, name, youngsGPa }: StiffPlastic): FigureDoubt {
  const modulus = youngsGPa.source.startsWith(KNOCK_SOURCE) ? KNOCKED : MODULUS
  return {
    shared: [{ id: errorId('modulus', id), name: `Stiffness of ${name}`, effect: modulus / 2 }],
    own: HOLDING / 2,
  }
}

/** A frequency goes with the root of the stiffness. */
export function toneDoubt(material: StiffPlastic): FigureDoubt {
  const { shared, own } = stiffnessDoubt(material)
  return { shared: shared.map((one) => ({ ...one, effect: one.effect / 2 })), own: own / 2 }
}

/** How far a safety may be off: the bond of layers, and where the load really goes. */
export function strengthDoubt({ id, name }: Pick<Material, 'id' | 'name'>): FigureDoubt {
  return {
    shared: [{ id: errorId('bond', id), name: `Bond of ${name}`, effect: BOND / 2 }],
    own: HOLDING / 2,
  }
}
