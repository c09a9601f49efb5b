import * as v from 'valibot'

/** What fits a schema, and what of it was brought into range for that, each in a few words. */
export interface Mended<T> {
  readonly value: T
  readonly notes: readonly string[]
}

/**
 * Each round mends everything a round of checks found; a mended value may fail the next check of
 * its pipe.
 */
const MOST_ROUNDS = 8

/**
 * A value as a schema wants it: numbers brought into their range, fractions rounded, texts cut to
 * their length. Null where anything else is wrong with it. What fits comes back as it is.
 */
export function mend<T>(schema: v.GenericSchema<unknown, T>, value: unknown): Mended<T> | null {
  let current = value
  const notes: string[] = []
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const parsed = v.safeParse(schema, current)
    if (parsed.success) return { value: parsed.output, notes }
    for (const issue of parsed.issues) {
      const better = inRange(issue)
      const path = issue.path?.map((step) => step.key as string | number)
      if (better === null) return null
      current = withAt(current, path ?? [], better)
      notes.push(`${v.getDotPath(issue) ?? 'it'} ${wordsOf(issue.input, better)}`)
    }
  }
  return null
}

/** The nearest value that passes the check that failed; null where the check is of another kind. */
function inRange(issue: v.BaseIssue<unknown>): number | string | null {
  const { type, input, requirement } = issue
  if (typeof input === 'number' && Number.isFinite(input)) {
    if (type === 'integer') return Math.round(input)
    if ((type === 'min_value' || type === 'max_value') && typeof requirement === 'number') {
      return requirement
    }
  }
  if (typeof input === 'string' && type === 'max_length' && typeof requirement === 'number') {
    return input.slice(0, requirement)
  }
  return null
}

function wordsOf(was: unknown, is: number | string): string {
  return typeof is === 'string' ? 'was too long and was cut' : `was ${String(was)}, ${is} was taken`
}

function withAt(
  value: unknown,
  [key, ...rest]: readonly (string | number)[],
  to: unknown,
): unknown {
  if (key === undefined) return to
  if (Array.isArray(value)) {
    return value.map((each: unknown, i) => (i === Number(key) ? withAt(each, rest, to) : each))
  }
  const fields = value as Readonly<Record<string, unknown>>
  return { ...fields, [key]: withAt(fields[key], rest, to) }
}
