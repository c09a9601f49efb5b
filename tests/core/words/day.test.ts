import { afterAll, expect, test } from 'vitest'
import { dayOf } from '../../../src/core/words/day.ts'

const zone = process.env['TZ']
afterAll(() => {
  if (zone === undefined) delete process.env['TZ']
  else process.env['TZ'] = zone
})

/** Offsets by the IANA time zone database: Kiritimati UTC+14, Pago Pago UTC−11, all year. */
test.each([
  ['Pacific/Kiritimati', '2026-03-01'],
  ['UTC', '2026-02-28'],
  ['Pacific/Pago_Pago', '2026-02-27'],
])('at 10:30 UTC it is in %s the %s', (name, day) => {
  process.env['TZ'] = name
  expect(dayOf(new Date('2026-02-28T10:30:00Z'))).toBe(day)
})
