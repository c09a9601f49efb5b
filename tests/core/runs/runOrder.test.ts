import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { eveningsOf } from '../../../src/core/runs/eveningPlan.ts'
import { inOrder, type OrderedRun } from '../../../src/core/runs/runOrder.ts'
import { waitingFor } from '../../../src/core/runs/waiting.ts'
import { jointEnd } from '../../support/fullFrame.ts'
import { plainJoint } from '../../support/plainJoints.ts'

const runs = fc.array(fc.record({ timeS: fc.integer({ min: 1, max: 40_000 }), waits: fc.nat(5) }), {
  minLength: 1,
  maxLength: 6,
})

describe('the order of runs', () => {
  test('leaves parts waiting no longer than any other order does', () => {
    fc.assert(
      fc.property(runs, (list) => {
        const least = Math.min(...ordersOf(list).map(waitedS))
        expect(waitedS(inOrder(list))).toBeLessThanOrEqual(least + 1e-6)
      }),
      { numRuns: 60 },
    )
  })

  test('is the shortest first where nothing is joined', () => {
    const list = [300, 100, 200].map((timeS) => ({ timeS, waits: 0 }))
    expect(inOrder(list).map(({ timeS }) => timeS)).toEqual([100, 200, 300])
  })

  test('brings the deck that four others hang on before a shorter run that none waits for', () => {
    const deck = { timeS: 4 * 3600, waits: 4 }
    const pads = { timeS: 3600, waits: 0 }
    expect(inOrder([pads, deck])).toEqual([deck, pads])
  })

  test('each part waits for those it is joined to, once', () => {
    const joint = (a: string, b: string) =>
      plainJoint(`${a} ${b}`, jointEnd(a, 0, [0, 0, 1]), jointEnd(b, 0, [0, 0, -1]))
    const joints = [joint('deck', 'arm'), joint('deck', 'arm'), joint('boom', 'deck')]
    expect([...waitingFor(joints)]).toEqual([
      ['deck', 2],
      ['arm', 1],
      ['boom', 1],
    ])
  })
})

describe('evenings', () => {
  test('by hand: what fits while there is time, a long one overnight, a longer one told', () => {
    const h = (number: number, hours: number) => ({ number, timeS: hours * 3600 })
    expect(eveningsOf([h(1, 1), h(2, 2.5), h(3, 3), h(4, 6), h(5, 12)], 4 * 3600)).toEqual([
      { runs: [1, 2], timeS: 3.5 * 3600, night: 4, isLate: false },
      { runs: [3], timeS: 3 * 3600, night: 5, isLate: true },
    ])
  })

  test('every run once, none longer than an evening by day', () => {
    fc.assert(
      fc.property(runs, fc.integer({ min: 600, max: 20_000 }), (list, eveningS) => {
        const numbered = list.map(({ timeS }, i) => ({ number: i + 1, timeS }))
        const evenings = eveningsOf(numbered, eveningS)
        const seen = evenings.flatMap(({ runs: own, night }) => [...own, ...(night ? [night] : [])])
        expect(seen.toSorted((a, b) => a - b)).toEqual(numbered.map(({ number }) => number))
        for (const { timeS } of evenings) expect(timeS).toBeLessThanOrEqual(eveningS)
      }),
    )
  })
})

/** Hours until each run is there, for everything that waits for it. */
function waitedS(list: readonly OrderedRun[]): number {
  let doneS = 0
  return list.reduce((sum, { timeS, waits }) => {
    doneS += timeS
    return sum + (1 + waits) * doneS
  }, 0)
}

function ordersOf<T>(list: readonly T[]): readonly (readonly T[])[] {
  if (list.length <= 1) return [list]
  return list.flatMap((one, i) =>
    ordersOf(list.toSpliced(i, 1)).map((rest): readonly T[] => [one, ...rest]),
  )
}
