const FRACTION = /[.,](\d{1,2})\D*$/

/**
 * What a right-aligned figure lacks of two decimals, so that a column stands by its decimal mark:
 * `0` for 7.0, nothing for 0.81. It takes room and is not seen: see `[data-pad]`.
 */
export function markPad(figure: string): string {
  const decimals = FRACTION.exec(figure)?.[1]?.length
  return decimals === undefined ? '.00' : '0'.repeat(2 - decimals)
}
