import type { Range } from '../../model/figures.ts'
import type { GivesLimit } from './types.ts'

/** A figure held against a limit. */
export interface AgainstLimit {
  /** Share by which its middle misses the limit; 0 where it keeps to it. */
  readonly shortBy: number
  /** All of its range keeps to it. */
  readonly isSure: boolean
}

/** What adding up in another order may change. */
const ROUNDING = 1e-9

/** Whether a part gives no further than asked, or rings no lower. */
export function keepsLimit(limit: keyof GivesLimit, asked: number, value: number): boolean {
  return limit === 'deflectionMm'
    ? value <= asked * (1 + ROUNDING)
    : value >= asked * (1 - ROUNDING)
}

export function againstLimit(
  limit: keyof GivesLimit,
  asked: number,
  { low, mid, high }: Range,
): AgainstLimit {
  const isKept = keepsLimit(limit, asked, mid)
  return {
    shortBy: isKept ? 0 : Math.abs(mid / asked - 1),
    isSure: keepsLimit(limit, asked, limit === 'deflectionMm' ? high : low),
  }
}
