import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import type { Actions } from '../../../src/state/actions/types.ts'
import type { AppState } from '../../../src/state/store/types.ts'
import { boxFile, startSession } from '../../support/session.ts'

type Step = (actions: Actions, state: AppState) => void

const ids = (state: AppState, picks: readonly number[]) =>
  state.frame.parts.filter((_, i) => picks.includes(i)).map((part) => part.id)

const picks = fc.uniqueArray(fc.nat({ max: 5 }), { maxLength: 4 })
const gesture = fc.option(fc.constantFrom('drag', 'other'), { nil: undefined })
const wild = fc.oneof(fc.double(), fc.integer({ min: -5, max: 500 }))

const step: fc.Arbitrary<Step> = fc.oneof(
  fc.record({ picks, gesture, infillPct: wild, walls: wild }).map(
    ({ picks: at, gesture: word, ...recipe }): Step =>
      (actions, state) =>
        actions.updateParts(ids(state, at), { recipe }, word),
  ),
  fc.record({ picks, quantity: wild, mirrored: wild }).map(
    ({ picks: at, ...patch }): Step =>
      (actions, state) =>
        actions.updateParts(ids(state, at), patch),
  ),
  picks.map(
    (at): Step =>
      (actions, state) =>
        actions.removeParts(ids(state, at)),
  ),
  picks.map(
    (at): Step =>
      (actions, state) =>
        actions.duplicateParts(ids(state, at)),
  ),
  fc.tuple(picks, fc.constantFrom('arm', 'plate', 'soft')).map(
    ([at, role]): Step =>
      (actions, state) =>
        actions.applyRole(ids(state, at), role),
  ),
  fc.string().map(
    (name): Step =>
      (actions) =>
        actions.renameFrame(name),
  ),
  fc.tuple(fc.constantFrom(...MATERIALS), gesture).map(
    ([material, word]): Step =>
      (actions) =>
        actions.putMaterial({ ...material, flow: 0.9 }, word),
  ),
  fc.tuple(fc.nat({ max: 300 }), gesture).map(
    ([massG, word]): Step =>
      (actions) =>
        actions.putCarbon(massG === 0 ? null : { massG, price: 30 }, word),
  ),
  fc.constant<Step>((actions) => actions.newFrame()),
)

async function frameOfThree() {
  const session = await startSession()
  await session.actions.addFiles([
    boxFile('a.stl', 5, 5, 1),
    boxFile('b.stl', 6, 5, 1),
    boxFile('c.stl', 7, 5, 1),
  ])
  await session.actions.settled()
  return session
}

function undoAll(actions: Actions, state: () => AppState, until: AppState['frame']): number {
  let steps = 0
  while (state().frame !== until && state().undoLabel !== null) {
    actions.undo()
    steps += 1
  }
  return steps
}

describe('undo and redo', () => {
  test('any actions undone give the first frame back, and redone the last', async () => {
    const { actions, state } = await frameOfThree()
    const first = state().frame
    fc.assert(
      fc.property(fc.array(step, { maxLength: 15 }), (steps) => {
        for (const act of steps) act(actions, state())
        const last = state().frame
        const undone = undoAll(actions, state, first)
        expect(state().frame).toBe(first)
        for (let k = 0; k < undone; k++) actions.redo()
        expect(state().frame).toBe(last)
        if (undone > 0) expect(state().redoLabel).toBeNull()
        undoAll(actions, state, first)
      }),
      { seed: 21, numRuns: 150 },
    )
    actions.close()
  })

  test('no action, whatever its numbers, leaves a part outside its limits', async () => {
    const { actions, state } = await frameOfThree()
    fc.assert(
      fc.property(fc.array(step, { maxLength: 10 }), (steps) => {
        for (const act of steps) act(actions, state())
        for (const part of state().frame.parts) {
          expect(part.quantity).toBeGreaterThanOrEqual(1)
          expect(part.mirrored).toBeLessThanOrEqual(part.quantity)
          expect(Number.isInteger(part.recipe.walls)).toBe(true)
          expect(part.recipe.infillPct).toBeGreaterThanOrEqual(0)
          expect(part.recipe.infillPct).toBeLessThanOrEqual(100)
        }
      }),
      { seed: 22, numRuns: 100 },
    )
    actions.close()
  })

  test('a drag is one step, two drags are two', async () => {
    const { actions, state } = await frameOfThree()
    const [id = ''] = ids(state(), [0])
    const infill = () => state().frame.parts[0]?.recipe.infillPct
    const before = infill()
    for (const infillPct of [40, 50, 60]) {
      actions.updateParts([id], { recipe: { infillPct } }, 'first')
    }
    for (const infillPct of [70, 80]) {
      actions.updateParts([id], { recipe: { infillPct } }, 'second')
    }
    actions.undo()
    expect(infill()).toBe(60)
    actions.undo()
    expect(infill()).toBe(before)
    actions.redo()
    actions.updateParts([id], { recipe: { infillPct: 65 } }, 'first')
    actions.undo()
    expect(infill()).toBe(60)
  })

  test('the buttons say what they would do', async () => {
    const { actions, state } = await frameOfThree()
    actions.updateParts(ids(state(), [1]), { recipe: { infillPct: 77 } })
    expect(state().undoLabel).toBe('change infill of “b”')
    actions.removeParts(ids(state(), [0, 1]))
    expect(state().undoLabel).toBe('remove 2 parts')
    actions.undo()
    expect([state().undoLabel, state().redoLabel]).toEqual([
      'change infill of “b”',
      'remove 2 parts',
    ])
  })

  test('removing offers its undo until something else is done', async () => {
    const { actions, state } = await frameOfThree()
    actions.removeParts(ids(state(), [0]))
    expect(state().notice).toEqual({ text: 'Removed “a”.', canUndo: true })
    actions.renameFrame('Other')
    expect(state().notice).toBeNull()
  })

  test('what is selected or open goes with its part', async () => {
    const { actions, state } = await frameOfThree()
    const all = ids(state(), [0, 1, 2])
    actions.select([...all, 'no such part'])
    actions.openPart(all[0] ?? null)
    expect(state().selection).toEqual(all)
    actions.removeParts(all.slice(0, 1))
    expect(state().selection).toEqual(all.slice(1))
    expect(state().openPartId).toBeNull()
  })

  test('an action that changes nothing is no step', async () => {
    const { actions, state } = await frameOfThree()
    const { frame, undoLabel } = state()
    const [part] = frame.parts
    actions.updateParts([part?.id ?? ''], { quantity: 1, recipe: { infillPct: 30 } })
    actions.updateParts(['no such part'], { quantity: 5 })
    actions.renameFrame(' ')
    actions.removeParts([])
    actions.putCarbon(null)
    expect(state().frame).toBe(frame)
    expect(state().undoLabel).toBe(undoLabel)
  })

  test('a recipe changed by hand is no longer the preset’s', async () => {
    const { actions, state } = await frameOfThree()
    const all = ids(state(), [0])
    actions.applyRole(all, 'arm')
    expect(state().frame.parts[0]?.role).toBe('arm')
    actions.updateParts(all, { note: 'left' })
    expect(state().frame.parts[0]?.role).toBe('arm')
    actions.updateParts(all, { recipe: { infillPct: 12 } })
    expect(state().frame.parts[0]?.role).toBeNull()
  })
})
