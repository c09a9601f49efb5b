import type { DrillRow } from '../../core/drill/types.ts'

/** Alike holes of one part that are for the same. */
export interface DrillGroup {
  readonly first: DrillRow
  readonly rows: readonly DrillRow[]
  /** As on the drawing: `2`, or `2.1–2.3` where others of the number are for something else. */
  readonly sign: string
}

/** Three and more in a row from the first to the last. */
function numbersOf(rows: readonly DrillRow[]): string {
  const runs: { first: string; last: string; count: number; next: number }[] = []
  for (const { number } of rows) {
    const own = Number(number.split('.')[1] ?? 0)
    const run = runs.at(-1)
    if (run?.next === own) {
      run.last = number
      run.count++
      run.next++
    } else runs.push({ first: number, last: number, count: 1, next: own + 1 })
  }
  return runs
    .map(({ first, last, count }) =>
      count === 1 ? first : `${first}${count === 2 ? ', ' : '–'}${last}`,
    )
    .join(', ')
}

/** Rows by drill, the thinnest first and those without one last; within a drill by part. */
export function groupRows(rows: readonly DrillRow[]): readonly DrillGroup[] {
  const groups = new Map<string, DrillRow[]>()
  const numbers = new Map<string, number>()
  for (const row of rows) {
    const { partId, group, use, drillMm, known } = row
    const key = JSON.stringify([partId, group, use, drillMm, known])
    const before = groups.get(key)
    if (before === undefined) groups.set(key, [row])
    else before.push(row)
    const number = `${partId} ${group}`
    numbers.set(number, (numbers.get(number) ?? 0) + 1)
  }
  return [...groups.values()]
    .flatMap((own): readonly DrillGroup[] => {
      const [first] = own
      if (first === undefined) return []
      const all = numbers.get(`${first.partId} ${first.group}`)
      const sign = all === own.length ? `${first.group}` : numbersOf(own)
      return [{ first, rows: own, sign }]
    })
    .toSorted((a, b) => (a.first.drillMm ?? Infinity) - (b.first.drillMm ?? Infinity))
}
