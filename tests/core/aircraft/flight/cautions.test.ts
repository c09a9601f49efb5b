import { expect, it } from 'vitest'
import { FLIGHT_CAUTIONS } from '../../../../src/core/aircraft/flight/cautions.ts'

it('cautions cover propellers, packs and first flights, each in a few sentences', () => {
  expect(Object.keys(FLIGHT_CAUTIONS)).toEqual(['props', 'pack', 'firstFlight', 'firstThrow'])
  for (const text of Object.values(FLIGHT_CAUTIONS)) expect(text.length).toBeLessThan(220)
})

it('first flights defer to local rules and to somebody who can fly', () => {
  for (const text of [FLIGHT_CAUTIONS.firstFlight, FLIGHT_CAUTIONS.firstThrow]) {
    expect(text).toContain('Local flying rules come first')
    expect(text).toContain('experienced pilot')
  }
})
