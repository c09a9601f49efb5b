/**
 * An uncertain quantity as a sum: its middle, and for every independent error what one standard
 * deviation of that error does to it. Two quantities that name the same error move together;
 * sums, differences and multiples of such quantities are such quantities again, without loss. All
 * values in the unit of the quantity.
 */
export interface Form {
  readonly mid: number
  /** Errors, no id twice; an error is drawn once and has mean 0, deviation 1. */
  readonly ids: readonly string[]
  /** What one deviation of each does. */
  readonly effects: readonly number[]
  /**
   * What it is sure to reach: errors are bells, equal to both sides, and some that only add would
   * else take away what nothing can. Of sums, the sum; 0 where one is taken away, or none is told.
   */
  readonly least: number
}

export const EXACT_ZERO: Form = { mid: 0, ids: [], effects: [], least: 0 }

/**
 * A quantity from its middle and its errors; effects of the same error add, and those of no size
 * are left out.
 */
export function formOf(mid: number, errors: Iterable<readonly [string, number]>): Form {
  const ids: string[] = []
  const effects: number[] = []
  const places = new Map<string, number>()
  for (const [id, effect] of errors) {
    if (effect !== 0) addError(ids, effects, places, id, effect)
  }
  return { mid, ids, effects, least: 0 }
}

/** The sum of quantities, each taken `times` over. */
export function sumForms(terms: readonly (readonly [form: Form, times: number])[]): Form {
  const [only] = terms
  if (terms.length === 1 && only?.[1] === 1) return only[0]
  let mid = 0
  let least = 0
  const ids: string[] = []
  const effects: number[] = []
  const places = new Map<string, number>()
  for (const [form, times] of terms) {
    mid += form.mid * times
    least += times < 0 ? -Infinity : form.least * times
    for (const [i, id] of form.ids.entries()) {
      addError(ids, effects, places, id, (form.effects[i] ?? 0) * times)
    }
  }
  return { mid, ids, effects, least: Math.max(0, least) }
}

function addError(
  ids: string[],
  effects: number[],
  places: Map<string, number>,
  id: string,
  effect: number,
): void {
  const place = places.get(id)
  if (place === undefined) {
    places.set(id, ids.length)
    ids.push(id)
    effects.push(effect)
  } else {
    effects[place] = (effects[place] ?? 0) + effect
  }
}

/** Where each error of a quantity stands, for those that are held against many others. */
const placesOf = new WeakMap<Form, ReadonlyMap<string, number>>()

/** What one deviation of an error does to a quantity. */
export function effectOf(form: Form, id: string): number {
  let places = placesOf.get(form)
  if (places === undefined) {
    places = new Map(form.ids.map((each, i) => [each, i]))
    placesOf.set(form, places)
  }
  return form.effects[places.get(id) ?? -1] ?? 0
}

/** Covariance of two quantities before anything was observed. */
export function covarianceOf(a: Form, b: Form): number {
  let sum = 0
  if (a === b) {
    for (const effect of a.effects) sum += effect * effect
    return sum
  }
  const [few, many] = a.ids.length <= b.ids.length ? [a, b] : [b, a]
  for (const [i, id] of few.ids.entries()) sum += (few.effects[i] ?? 0) * effectOf(many, id)
  return sum
}
