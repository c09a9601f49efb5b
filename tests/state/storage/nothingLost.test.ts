import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { PIECES_LIMITS, RECIPE_LIMITS, TEXT_LIMITS } from '../../../src/core/data/limits.ts'
import { parseFrame } from '../../../src/state/storage/parseFrame.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import { ACTS, anyAct, type ActKind } from '../../support/anyAct.ts'
import { expectKept } from '../../support/expectKept.ts'
import { boxFile, startSession } from '../../support/session.ts'

const RUNS = 60

describe('whatever the page accepts', () => {
  test('is the same when it is opened again, from storage and from a file (seed 9)', async () => {
    const tried = new Set<ActKind>()
    await fc.assert(
      fc.asyncProperty(
        fc.boolean(),
        fc.array(anyAct, { minLength: 4, maxLength: 24 }),
        async (isFull, acts) => {
          const storage = createMemoryStorage()
          await expectKept(storage, isFull, acts)
          for (const [kind] of acts) tried.add(kind)
        },
      ),
      { seed: 9, numRuns: RUNS },
    )
    expect([...tried].toSorted()).toEqual(Object.keys(ACTS).toSorted())
  }, 240_000)

  test('names and notes too long are refused and said, not cut', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const [part] = state().frame.parts
    actions.updateParts([part?.id ?? ''], { note: 'x'.repeat(TEXT_LIMITS.note + 1) })
    expect(state().frame.parts[0]).toBe(part)
    expect(state().notice?.text).toMatch(/^Nothing was changed: “bar” is out of range \(note/)
    actions.close()
  })

  test('what was saved before out of range is opened in range, and said; no part goes', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const { frame } = state()
    const parts = frame.parts.map((part) => ({
      ...part,
      quantity: 3_000_000,
      note: 'n'.repeat(10_001),
      recipe: { ...part.recipe, layerMm: 5, walls: 2.4 },
    }))
    const old = { ...frame, name: 'f'.repeat(10_001), parts, carbon: { massG: -3, price: 2 } }
    const opened = parseFrame(JSON.parse(JSON.stringify(old)))
    if (!opened.ok) throw new Error(opened.problem.message)
    expect(opened.value.frame.parts[0]).toMatchObject({
      quantity: PIECES_LIMITS.quantity.max,
      recipe: { layerMm: RECIPE_LIMITS.layerMm.max, walls: 2 },
    })
    expect(opened.value.frame.name).toHaveLength(TEXT_LIMITS.name)
    expect(opened.value.frame.carbon).toEqual({ massG: 0, price: 2 })
    const said = opened.value.complaints.join('\n')
    expect(said).toContain('quantity was 3000000, 100000 was taken')
    expect(said).toContain('recipe.layerMm was 5, 2 was taken')
    expect(said).toContain('note was too long and was cut')
    actions.close()
  })
})
