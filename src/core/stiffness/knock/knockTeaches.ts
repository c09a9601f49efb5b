import { KNOCK_SOURCE, stiffnessDoubt } from '../../doubt/stiffness.ts'
import type { Material, Range, Sourced } from '../../model/figures.ts'

/** What a knock says of a plastic. */
export interface KnockLesson {
  /** Heard over reckoned frequency. */
  readonly ratio: number
  /** Young's modulus after it, GPa. */
  readonly youngsGPa: Range
  /**
   * Of what the stiffness is off, so much goes to the plastic; the rest to how the part is held.
   */
  readonly share: number
  /** Whether it lies so far out that hold or tip are likelier wrong than the plastic. */
  readonly isOdd: boolean
}

/** Standard deviations beyond which a reading is no surprise of the plastic's any more. */
const ODD = 3

/**
 * Stiffness goes with the square of a tone. What it is off is shared between the plastic's modulus
 * and everything else by what each is unsure of: one observation of the doubt model, in closed form
 * (T. Bayes; normal errors of logarithms).
 */
export function knockTeaches(
  heard: { readonly hz: number; readonly doubtHz: number },
  reckonedHz: number,
  material: Pick<Material, 'id' | 'name' | 'youngsGPa'>,
): KnockLesson {
  const { shared, own } = stiffnessDoubt(material)
  const before = Math.hypot(...shared.map(({ effect }) => effect))
  const reading = Math.hypot(own, (2 * heard.doubtHz) / heard.hz)
  const share = before ** 2 / (before ** 2 + reading ** 2)
  const ratio = heard.hz / reckonedHz
  const off = 2 * Math.log(ratio)
  const mid = material.youngsGPa.value * Math.exp(share * off)
  const after = before * Math.sqrt(1 - share)
  return {
    ratio,
    youngsGPa: { low: mid * (1 - 2 * after), mid, high: mid * (1 + 2 * after) },
    share,
    isOdd: Math.abs(off) > ODD * Math.hypot(before, reading),
  }
}

/** The modulus as a material keeps it. */
export function knockedModulus({ youngsGPa }: KnockLesson, partName: string): Sourced {
  const value = Math.round(youngsGPa.mid * 1000) / 1000
  return { value, mark: 'user', source: `${KNOCK_SOURCE} ${partName}` }
}
