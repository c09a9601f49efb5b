import type { GrowthAllowance, MassStatus } from '../model/aircraft.ts'

/**
 * Where growth allowances start; the builder edits them (common practice, no source). The terms
 * basic mass, mass growth allowance, predicted mass, mass limit and margin are used as in AIAA
 * S-120A-2015 and SAWE RP A-3; their tables were not read.
 */
export const GROWTH_DEFAULTS: GrowthAllowance = {
  estimatedPct: 10,
  calculatedPct: 5,
  weighedPct: 0.5,
}

/** Allowance of a status, % of the mass. */
export function growthPct(growth: GrowthAllowance, status: MassStatus): number {
  switch (status) {
    case 'estimated':
      return growth.estimatedPct
    case 'calculated':
      return growth.calculatedPct
    case 'weighed':
      return growth.weighedPct
  }
}
