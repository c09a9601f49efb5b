/**
 * Of a list of known distances between lines, two places, and how far something lies from one to
 * the other (0–1).
 */
export interface Between {
  readonly from: number
  readonly to: number
  readonly share: number
}

/**
 * Where a distance between lines lies among the known ones, the narrowest first: in even ratios,
 * and at the last one beyond either end.
 */
export function betweenSpacings(
  steps: readonly { readonly spacingMm: number }[],
  spacingMm: number,
): Between {
  let narrower = 0
  let wider = steps[0]?.spacingMm ?? 0
  let to = 0
  while (to < steps.length - 1 && wider < spacingMm) {
    narrower = wider
    wider = steps[++to]?.spacingMm ?? 0
  }
  if (to === 0 || wider < spacingMm) return { from: to, to, share: 0 }
  return { from: to - 1, to, share: Math.log(spacingMm / narrower) / Math.log(wider / narrower) }
}

/** A value known at every one of the spacings; 0 where there are none. */
export function valueBetween(values: ArrayLike<number>, { from, to, share }: Between): number {
  return (values[from] ?? 0) * (1 - share) + (values[to] ?? 0) * share
}
