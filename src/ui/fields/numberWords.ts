/** What a number box takes. */
export interface Bounds {
  readonly label: string
  readonly min?: number
  readonly max?: number
  /** Shown behind the number; part of the accessible name. */
  readonly unit?: string
}

const plain = new Intl.NumberFormat(undefined, { maximumFractionDigits: 6 })

/** Said when letters or signs were typed, which never reach the box. */
export function lettersWords(bounds: Bounds, digits: number): string {
  return `“${bounds.label}” takes ${digits === 0 ? 'whole numbers' : 'numbers'} only${spanWords(bounds)}.`
}

/** Said when nothing, or nothing that is a number, was left in the box. */
export function emptyWords(bounds: Bounds): string {
  return `“${bounds.label}” needs a number${spanWords(bounds)}. The old one is back.`
}

/** Said when `kept` was taken in place of a number out of bounds. */
export function outsideWords(bounds: Bounds, kept: number): string {
  return `“${bounds.label}” takes${spanWords(bounds).replace(',', '')}. ${plain.format(kept)} was taken: type another if that is not what you mean.`
}

/** ", 1 to 500 g". */
function spanWords({ min, max, unit }: Bounds): string {
  const behind = unit === undefined ? '' : ` ${unit}`
  if (min !== undefined && max !== undefined) {
    return `, ${plain.format(min)} to ${plain.format(max)}${behind}`
  }
  if (min !== undefined) return `, ${plain.format(min)}${behind} or more`
  return max === undefined ? '' : `, ${plain.format(max)}${behind} or less`
}
