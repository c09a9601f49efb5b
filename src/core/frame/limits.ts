import type { FrameLimits, StrictestLimit } from './types.ts'

/**
 * The two limits and the stricter one, in grams of printed parts: of an all-up limit what
 * everything bought leaves over. Of equal ones the printed limit is named.
 */
export function frameLimits(
  limits: { readonly limitG: number | null; readonly printedLimitG: number | null },
  printedG: number,
  boughtG: number,
): FrameLimits {
  const { limitG, printedLimitG } = limits
  const leftForPrinted = limitG === null ? null : limitG - boughtG
  const strict = (kind: StrictestLimit['kind'], atG: number): StrictestLimit => ({
    kind,
    printedG: atG,
    leftG: atG - printedG,
  })
  let strictest: StrictestLimit | null = null
  if (leftForPrinted !== null) strictest = strict('all-up', leftForPrinted)
  if (printedLimitG !== null && (strictest === null || printedLimitG <= strictest.printedG)) {
    strictest = strict('printed', printedLimitG)
  }
  return { allUpG: limitG, printedG: printedLimitG, strictest }
}
