import * as table from '../../src/core/data/limits.ts'

/**
 * Every row of the table of limits by `TABLE.row`: whatever the file exports that is limits, or
 * holds some.
 */
export const LIMIT_ROWS: readonly (readonly [string, table.Limits])[] = Object.entries(
  table,
).flatMap(([name, value]: [string, unknown]) => {
  if (isLimits(value)) return [[name, value] as const]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, each]: [string, unknown]) =>
    isLimits(each) ? [[`${name}.${key}`, each] as const] : [],
  )
})

function isLimits(value: unknown): value is table.Limits {
  return typeof value === 'object' && value !== null && 'min' in value && 'whole' in value
}
