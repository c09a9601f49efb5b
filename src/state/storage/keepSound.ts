import * as v from 'valibot'
import { mend } from './mend.ts'

/**
 * Keeps what fits a schema, mends what is out of range, and says of the rest, by name, that it was
 * left out.
 */
export type Keep = <T>(
  schema: v.GenericSchema<unknown, T>,
  value: unknown,
  what: string,
  or: T,
) => T

/** A keeper that writes what it has to say, each in a sentence, into `complaints`. */
export function createKeep(complaints: string[]): Keep {
  return (schema, value, what, or) => {
    const parsed = v.safeParse(schema, value)
    if (parsed.success) return parsed.output
    const mended = mend(schema, value)
    if (mended !== null) {
      complaints.push(`${what} was out of range: ${mended.notes.join('; ')}.`)
      return mended.value
    }
    complaints.push(`${what} is damaged (${firstIssue(parsed.issues)}) and was left out.`)
    return or
  }
}

/** The sound ones of a list; `what` is the word for one of them. */
export function keepList<T>(
  keep: Keep,
  schema: v.GenericSchema<unknown, T>,
  values: readonly unknown[],
  what: string,
): readonly T[] {
  return values.flatMap((value, index): T[] => {
    const sound = keep<T | null>(schema, value, `${what} ${nameOf(value, index)}`, null)
    return sound === null ? [] : [sound]
  })
}

/** Its name, or where it stands in its list, counted from 1. */
export function nameOf(value: unknown, index: number): string {
  const named = v.safeParse(v.object({ name: v.string() }), value)
  return named.success ? `“${named.output.name.slice(0, 80)}”` : `${index + 1}`
}

export function firstIssue(issues: readonly v.BaseIssue<unknown>[]): string {
  const [issue] = issues
  if (issue === undefined) return 'unknown reason'
  const path = v.getDotPath(issue)
  return path === null ? issue.message : `${path}: ${issue.message}`
}
