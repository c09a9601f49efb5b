import * as v from 'valibot'
import { SPOOL_LIMITS, TEXT_LIMITS } from '../core/data/limits.ts'
import type { Spool } from '../core/model/spools.ts'
import { isJson, numberIn, parseJson, textOf } from './settings.ts'
import { UsageError } from './usage.ts'

const EXAMPLE = '[{"material": "petg", "grossG": 812, "emptyG": 223}]'

/**
 * Spools from JSON text or the path of a file that holds it. Throws UsageError with what is wrong.
 */
export function spoolsFrom(given: string, readText: (path: string) => string): readonly Spool[] {
  const text = isJson(given) ? given : textOf('--spools', 'JSON', given, readText)
  const told = parseJson('--spools', text)
  if (!Array.isArray(told)) throw new UsageError(`--spools: it must be a list such as ${EXAMPLE}.`)
  return told.map((one: unknown, i) => {
    const spool = v.safeParse(SPOOL, one)
    if (spool.success) {
      const { material: materialId, ...grams } = spool.output
      return { id: String(i + 1), materialId, ...grams }
    }
    const [issue] = spool.issues
    const key = v.getDotPath(issue)
    const said = issue.type === 'strict_object' && key !== null ? keyWords(issue) : issue.message
    const why = key === null ? said : `${key} ${said}`
    throw new UsageError(`--spools: number ${i + 1} is not as ${EXAMPLE}: ${why}.`)
  })
}

/** One that is left out, or one too many. */
function keyWords({ expected }: v.BaseIssue<unknown>): string {
  return expected === 'never' ? 'is none of its keys' : 'is missing'
}

const SPOOL = v.strictObject({
  material: v.pipe(
    v.string(({ input }) => `is ${JSON.stringify(input)}; it must be the id of a material`),
    v.nonEmpty('is empty; it must be the id of a material'),
    v.maxLength(TEXT_LIMITS.id, `is longer than ${TEXT_LIMITS.id} letters`),
  ),
  grossG: numberIn(SPOOL_LIMITS.grossG),
  emptyG: numberIn(SPOOL_LIMITS.emptyG),
})
