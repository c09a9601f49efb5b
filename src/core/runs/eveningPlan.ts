import { NIGHT_H } from '../data/runs.ts'

/** One evening at the printer. */
export interface Evening {
  /** Numbers of the runs that somebody sits by, one after the other. */
  readonly runs: readonly number[]
  readonly timeS: number
  /** The run left alone from then on; null for none. */
  readonly night: number | null
  /** It is not done by the next morning. */
  readonly isLate: boolean
}

/**
 * Runs put into evenings of so long, in their order: those that fit while there is time, and one
 * that outlasts an evening overnight.
 */
export function eveningsOf(
  runs: readonly { readonly number: number; readonly timeS: number }[],
  eveningS: number,
): readonly Evening[] {
  let short = runs.filter(({ timeS }) => timeS <= eveningS)
  const long = runs.filter(({ timeS }) => timeS > eveningS)
  const evenings: Evening[] = []
  while (short.length > 0 || long.length > 0) {
    const own: number[] = []
    let spentS = 0
    for (const { number, timeS } of short) {
      if (spentS + timeS > eveningS) continue
      own.push(number)
      spentS += timeS
    }
    short = short.filter(({ number }) => !own.includes(number))
    const night = long.shift() ?? null
    const isLate = night !== null && night.timeS > NIGHT_H * 3600
    evenings.push({ runs: own, timeS: spentS, night: night?.number ?? null, isLate })
  }
  return evenings
}
