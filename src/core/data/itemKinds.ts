import type { ItemGroup, MassBasis, MassStatus } from '../model/aircraft.ts'

/** What is bought, in the order that lists have it. */
export const ITEM_GROUPS = [
  'fasteners',
  'structure',
  'drive',
  'power',
  'electronics',
  'payload',
  'other',
] as const satisfies readonly ItemGroup[]

/** In the order of trust. */
export const MASS_STATUSES = [
  'estimated',
  'calculated',
  'weighed',
] as const satisfies readonly MassStatus[]

export const MASS_BASES = [
  'published',
  'computed',
  'memory',
  'typed',
] as const satisfies readonly MassBasis[]
