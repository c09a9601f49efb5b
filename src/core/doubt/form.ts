/**
 * An uncertain quantity as a sum: its middle, and for every independent error what one standard
 * deviation of that error does to it. Two quantities that name the same error move together;
 * sums, differences and multiples of such quantities are such quantities again, without loss. All
 * values in the unit of the quantity.
 */
export interface Form {
  readonly mid: number
  /** Error id to its effect; an error is drawn once and has mean 0, deviation 1. */
  readonly errors: ReadonlyMap<string, number>
}

export const EXACT_ZERO: Form = { mid: 0, errors: new Map() }

/**
 * A quantity from its middle and its errors; effects of the same error add, and those of no size
 * are left out.
 */
export function formOf(mid: number, errors: Iterable<readonly [string, number]>): Form {
  const found = new Map<string, number>()
  for (const [id, effect] of errors) {
    if (effect !== 0) found.set(id, (found.get(id) ?? 0) + effect)
  }
  return { mid, errors: found }
}

/** The sum of quantities, each taken `times` over. */
export function sumForms(terms: readonly (readonly [form: Form, times: number])[]): Form {
  const [only] = terms
  if (terms.length === 1 && only?.[1] === 1) return only[0]
  let mid = 0
  const errors = new Map<string, number>()
  for (const [form, times] of terms) {
    mid += form.mid * times
    for (const [id, effect] of form.errors) errors.set(id, (errors.get(id) ?? 0) + effect * times)
  }
  return { mid, errors }
}

/** Covariance of two quantities before anything was observed. */
export function covarianceOf(a: Form, b: Form): number {
  if (a === b) {
    let squares = 0
    for (const effect of a.errors.values()) squares += effect * effect
    return squares
  }
  const [few, many] = a.errors.size <= b.errors.size ? [a, b] : [b, a]
  let sum = 0
  for (const [id, effect] of few.errors) sum += effect * (many.errors.get(id) ?? 0)
  return sum
}
