/** Of the line of a mark on the drawing. */
export const markId = (sign: string): string => `mark-${sign}`

/** Of a finding's whole sentence, which says what to do. */
export const findingId = (sign: string): string => `finding-${sign}`

/** Goes to where it stands what to do about a mark: the finding in full, or the mark's line. */
export function goToRemedy(sign: string): void {
  const line = document.getElementById(findingId(sign)) ?? document.getElementById(markId(sign))
  line?.focus({ preventScroll: true })
  line?.scrollIntoView({ block: 'center' })
}
