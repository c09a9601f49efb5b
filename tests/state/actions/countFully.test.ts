import { expect, test } from 'vitest'
import { createHandler } from '../../../src/jobs/handle.ts'
import { createInProcessRunner } from '../../../src/jobs/inProcess.ts'
import { ledgerCsv } from '../../../src/state/actions/csv.ts'
import { frameSummary, ledgerRows } from '../../../src/state/store/derived.ts'
import { boxFile, startSession } from '../../support/session.ts'

/** Every look at the clock finds a second gone: more than ten of them are too many. */
function slowRunner() {
  let ms = 0
  return createInProcessRunner(createHandler(() => (ms += 1000)))
}

test('a part that takes too long stays coarse until it is asked to be counted fully', async () => {
  const { actions, storage, state } = await startSession({ runner: slowRunner() })
  await actions.addFiles([boxFile('post.stl', 18, 12, 40)])
  await actions.settled()
  const [coarse] = ledgerRows(state())
  expect(coarse).toMatchObject({ basis: 'coarse', progress: null })
  expect(frameSummary(state())).toMatchObject({ coarseCount: 1, censusCount: 0, runningCount: 0 })
  expect(ledgerCsv(state())).toContain('some layers, coarse')

  const { undoLabel } = state()
  const { id } = coarse!.part
  actions.countFully(id)
  await actions.settled()
  const [full] = ledgerRows(state())
  expect(full).toMatchObject({ basis: 'census', progress: null })
  expect(frameSummary(state())).toMatchObject({ coarseCount: 0, censusCount: 1 })
  const { low, mid, high } = coarse!.figures!.massG
  expect(full!.figures!.massG.mid).toBeGreaterThan(low)
  expect(full!.figures!.massG.mid).toBeLessThan(high)
  expect(full!.figures!.massG.high - full!.figures!.massG.low).toBeLessThan(high - low)
  expect(mid).not.toBe(full!.figures!.massG.mid)

  // No step of undo, and no step takes it back.
  expect(state().undoLabel).toBe(undoLabel)
  actions.updateParts([id], { quantity: 3 })
  actions.undo()
  expect(state().frame.parts[0]).toMatchObject({ id, quantity: 1, countsFully: true })

  // Kept with the part.
  await actions.flush()
  const again = await startSession({ runner: slowRunner(), storage })
  await again.actions.settled()
  expect(again.state().frame.parts[0]).toMatchObject({ countsFully: true })
  expect(ledgerRows(again.state())[0]).toMatchObject({ basis: 'census' })
})
