import type { Belief } from './belief.ts'
import type { Form } from './form.ts'
import { effectOf, formOf } from './form.ts'
import { ownerOf } from './lines.ts'

/** What one source adds to a quantity's doubt. */
export interface Blame {
  /** Of the shared error, or of the line. */
  readonly id: string
  readonly kind: 'shared' | 'own'
  /** One standard deviation of the quantity from this source alone. */
  readonly sigma: number
  /**
   * Of the variance; all together 1. Below zero where a reading has tied it to another that
   * outweighs it.
   */
  readonly share: number
}

/**
 * Whom to blame for a quantity's doubt, the largest share first; nothing where there is none.
 * What belongs to one line alone is told as one.
 */
export function blameFor(form: Form, belief: Belief): readonly Blame[] {
  const { sigma } = belief.of(form)
  if (!(sigma > 0)) return []
  const parts = new Map<string, [string, number][]>()
  for (const errorId of form.ids) {
    const id = ownerOf(errorId) ?? errorId
    const part = parts.get(id) ?? []
    part.push([errorId, effectOf(form, errorId)])
    parts.set(id, part)
  }
  return [...parts]
    .map(([id, errors]): Blame => {
      const part = formOf(0, errors)
      const isShared = errors.some(([errorId]) => ownerOf(errorId) === null)
      return {
        id,
        kind: isShared ? 'shared' : 'own',
        sigma: belief.of(part).sigma,
        share: belief.covariance(form, part) / sigma ** 2,
      }
    })
    .toSorted((a, b) => b.share - a.share)
}
