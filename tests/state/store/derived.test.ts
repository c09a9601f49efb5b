import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { frameSummary, ledgerRows } from '../../../src/state/store/derived.ts'
import { materialOf, materialsOf } from '../../../src/state/store/materialOf.ts'
import { boxFile, startSession } from '../../support/session.ts'

async function frameOfTwo() {
  const session = await startSession()
  await session.actions.addFiles([boxFile('a.stl', 20, 20, 4), boxFile('b.stl', 10, 10, 4)])
  await session.actions.settled()
  const [a, b] = session.state().frame.parts
  if (a === undefined || b === undefined) throw new Error('two parts expected')
  return { ...session, a, b }
}

describe('the ledger', () => {
  test('sums flying pieces in grams, and spares too in cost and hours', async () => {
    const { actions, state, a, b } = await frameOfTwo()
    actions.updateParts([a.id], { quantity: 3, spares: 2 })
    const [rowA, rowB] = ledgerRows(state())
    const { sum } = frameSummary(state())
    const massA = rowA?.figures?.massG.mid ?? Number.NaN
    const massB = rowB?.figures?.massG.mid ?? Number.NaN
    expect(sum.printed.massG.mid).toBeCloseTo(3 * massA + massB, 9)
    expect(rowA?.sum?.flying.massG.mid).toBeCloseTo(3 * massA, 9)
    const costA = rowA?.figures?.cost.mid ?? Number.NaN
    const costB = rowB?.figures?.cost.mid ?? Number.NaN
    expect(sum.withSpares.cost.mid).toBeCloseTo(5 * costA + costB, 9)
    expect(sum.withSpares.pieces).toBe(6)
    expect(rowA?.sum?.massShare).toBeCloseTo((3 * massA) / (3 * massA + massB), 9)
    expect(b.quantity).toBe(1)
  })

  test('compares with a carbon frame once there is one', async () => {
    const { actions, state } = await frameOfTwo()
    expect(frameSummary(state()).sum.carbon).toBeNull()
    actions.putCarbon({ massG: 1, price: 2 })
    const { sum } = frameSummary(state())
    expect(sum.carbon?.massG.mid).toBeCloseTo(sum.printed.massG.mid - 1, 9)
    expect(sum.carbon?.cost.mid).toBeCloseTo(sum.printed.cost.mid - 2, 9)
  })

  test('a change of one part computes that one anew and leaves the others’ figures the same objects', async () => {
    const { actions, state, a } = await frameOfTwo()
    const [beforeA, beforeB] = ledgerRows(state())
    actions.updateParts([a.id], { recipe: { infillPct: 55 } })
    const [afterA, afterB] = ledgerRows(state())
    expect(afterA?.figures).not.toBe(beforeA?.figures)
    expect(afterB?.figures).toBe(beforeB?.figures)
  })

  test('what has nothing to do with figures leaves rows and summary the same objects', async () => {
    const { actions, state, a } = await frameOfTwo()
    const rows = ledgerRows(state())
    const summary = frameSummary(state())
    actions.select([a.id])
    actions.openPart(a.id)
    expect(ledgerRows(state())).toBe(rows)
    expect(frameSummary(state())).toBe(summary)
    actions.renameFrame('Other')
    expect(frameSummary(state()).sum).toBe(summary.sum)
    expect(ledgerRows(state()).every((row, i) => row === rows[i])).toBe(true)
  })

  test('is finished and empty for an empty frame', async () => {
    const { state } = await startSession()
    expect(ledgerRows(state())).toEqual([])
    expect(frameSummary(state())).toMatchObject({ partCount: 0, progress: 1, runningCount: 0 })
  })
})

describe('materials of a frame', () => {
  test('are priced in its currency, and a changed one stands in its old place', async () => {
    const { actions, state } = await startSession()
    expect(state().frame.prices.currency).toBe('GBP')
    const { frame } = state()
    const pla = materialOf(frame, 'pla')
    expect(materialOf(frame, 'pla')).toBe(pla)
    actions.putMaterial({ ...pla, name: 'My spool' })
    actions.putMaterial({ ...pla, id: 'mine', name: 'Another' })
    const all = materialsOf(state().frame)
    expect(all).toHaveLength(MATERIALS.length + 1)
    expect(all[0]?.name).toBe('My spool')
    expect(all.at(-1)?.name).toBe('Another')
    expect(materialOf(state().frame, 'pla').name).toBe('My spool')
  })

  test('an unknown material is the first built-in one, not a crash', async () => {
    const { state } = await startSession()
    expect(materialOf(state().frame, 'unobtainium').id).toBe(MATERIALS[0]?.id)
  })
})
