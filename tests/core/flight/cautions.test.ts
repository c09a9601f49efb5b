import { expect, it } from 'vitest'
import { FLIGHT_CAUTIONS } from '../../../src/core/flight/cautions.ts'

it('cautions cover propellers, packs and first flights, each in a few sentences', () => {
  expect(Object.keys(FLIGHT_CAUTIONS)).toEqual(['props', 'pack', 'firstFlight'])
  for (const text of Object.values(FLIGHT_CAUTIONS)) expect(text.length).toBeLessThan(220)
})
