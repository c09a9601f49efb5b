import { writeFileSync } from 'node:fs'
import { couponFor } from '../core/drill/coupon.ts'
import type { DrillRow } from '../core/drill/types.ts'
import { writeStl } from '../core/formats/writeStl.ts'
import type { Outcome } from '../core/model/problem.ts'
import { whyUnread } from './whyUnread.ts'

/** Writes the coupon of these holes as STL. Never throws for what is wrong with the path. */
export function writeCoupon(
  path: string,
  asGiven: string,
  rows: readonly DrillRow[],
): Outcome<null> {
  const coupon = couponFor(rows)
  if (coupon === null) {
    const message = 'No hole of the frame is drilled, so there is no coupon to write.'
    return { ok: false, problem: { code: 'bad-settings', message, advice: 'Leave out --coupon.' } }
  }
  try {
    writeFileSync(path, writeStl(coupon.mesh))
    return { ok: true, value: null }
  } catch (error) {
    const why = whyUnread(error, path)
    const message = `The coupon could not be written to “${asGiven}”: ${why}.`
    const advice = 'Name a file in a folder that exists and may be written to.'
    return { ok: false, problem: { code: 'unreadable-file', message, advice } }
  }
}
