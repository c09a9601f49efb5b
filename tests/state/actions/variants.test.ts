import { describe, expect, test } from 'vitest'
import { parseFrame } from '../../../src/state/storage/parseFrame.ts'
import { fillFrame } from '../../support/fullFrame.ts'
import { startSession } from '../../support/session.ts'

describe('variants of a frame', () => {
  test('are kept with it, at most four, and give back what is sound of a damaged one', async () => {
    const { actions, state } = await startSession()
    const full = await fillFrame(actions, state)
    const [variant] = full.variants ?? []
    expect(variant?.name).toBe('Lighter')
    const opened = parseFrame(JSON.parse(JSON.stringify(full)))
    expect(opened).toMatchObject({
      ok: true,
      value: { frame: { variants: [variant] }, complaints: [] },
    })
    const many = Array.from({ length: 5 }, (_, i) => ({ ...variant!, id: `v${i}` }))
    actions.putVariants(many, 'keep')
    expect(state().frame.variants).toEqual([variant])
    expect(state().notice?.text).toBe('Nothing was changed: at most 4 variants are kept.')
    const spoilt = { ...full, variants: [{ ...variant, ways: 'none' }, variant] }
    const mended = parseFrame(spoilt)
    expect(mended).toMatchObject({ ok: true, value: { frame: { variants: [variant] } } })
    expect(mended.ok && mended.value.complaints).toHaveLength(1)
    const { variants: _, ...without } = full
    expect(parseFrame(without)).toMatchObject({ ok: true, value: { complaints: [] } })
  })

  test('are taken in one step of undo, several parts at once', async () => {
    const { actions, state } = await startSession()
    await fillFrame(actions, state)
    const before = state().frame
    const ways = Object.fromEntries(
      before.parts.map(({ id, recipe, materialId }) => [
        id,
        { recipe: { ...recipe, infillPct: 12, walls: 3 }, materialId },
      ]),
    )
    actions.takeWays(ways, 'take variant “Lighter”')
    expect(
      state().frame.parts.map(({ recipe: { infillPct, walls } }) => [infillPct, walls]),
    ).toEqual(before.parts.map(() => [12, 3]))
    expect(state().undoLabel).toBe('take variant “Lighter”')
    actions.undo()
    expect(state().frame.parts).toEqual(before.parts)
  })
})
