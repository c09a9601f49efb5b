import type { Aircraft } from '../model/aircraft.ts'
import { GROWTH_DEFAULTS } from './growth.ts'
import { MASS_LINES } from './massLines.ts'

/**
 * An aircraft of which nothing but the printed parts is known. Prices of cut plate, lead times and
 * crash rates are starting values to type over (judgement, no source): no dated price of cut carbon
 * plate was found.
 */
export const AIRCRAFT_DEFAULTS: Aircraft = {
  items: [],
  growth: GROWTH_DEFAULTS,
  limitG: null,
  printedLimitG: null,
  massLines: MASS_LINES,
  places: [],
  joints: [],
  flight: null,
  wing: null,
  twin: {
    plate: 'carbon',
    thicknessMm: {},
    platePricePerDm2: 6,
    cutPricePerM: 4,
    deliveryDays: 7,
  },
  season: {
    flights: 60,
    crashesPerFlight: 0.1,
    breakShare: {},
    carbonLeadDays: 7,
    carbonPartPrice: 10,
  },
}
