import type { Belief } from './belief.ts'
import type { Form } from './form.ts'
import { formOf } from './form.ts'

/** What one source adds to a quantity's doubt. */
export interface Blame {
  readonly id: string
  readonly name: string
  readonly kind: 'shared' | 'own'
  /** One standard deviation of the quantity from this source alone. */
  readonly sigma: number
  /**
   * Of the variance; all together 1. Below zero where a reading has tied it to another that
   * outweighs it.
   */
  readonly share: number
}

/** Errors that are told as one. */
export interface Source {
  readonly id: string
  readonly name: string
  readonly kind: Blame['kind']
  readonly errorIds: readonly string[]
}

/** Whom to blame for a quantity's doubt, the largest share first; nothing where there is none. */
export function blameFor(form: Form, belief: Belief, sources: readonly Source[]): readonly Blame[] {
  const { sigma } = belief.of(form)
  if (!(sigma > 0)) return []
  return sources
    .flatMap(({ id, name, kind, errorIds }): Blame[] => {
      const part = formOf(
        0,
        errorIds.map((errorId) => [errorId, form.errors.get(errorId) ?? 0] as const),
      )
      if (part.errors.size === 0) return []
      const share = belief.covariance(form, part) / sigma ** 2
      return [{ id, name, kind, sigma: belief.of(part).sigma, share }]
    })
    .toSorted((a, b) => b.share - a.share)
}
