/** Millimetres in a sentence of the core: at most two decimals, none needless. */
export function mm(value: number): string {
  return String(Number(value.toFixed(2)))
}
