import { expect, test } from 'vitest'
import { createMemoryStorage } from '../../src/state/storage/memoryStorage.ts'
import { startSession } from '../support/session.ts'

// The empty frame that a visit begins with was taken as stored. Going back to it, from the sample
// as from any other frame, told that it “was changed in another tab” and let nothing be changed.

test('going back to the frame that a visit began with leaves it this tab’s, and writes it', async () => {
  const storage = createMemoryStorage()
  const { actions, state } = await startSession({ storage })
  const { id } = state().frame
  actions.newFrame()
  await actions.flush()
  expect(state().frame.id).not.toBe(id)
  actions.undo()
  await actions.flush()
  expect(state().frame.id).toBe(id)
  expect(state().elsewhere).toBeNull()
  actions.renameFrame('mine')
  await actions.flush()
  expect(state().elsewhere).toBeNull()
  expect(await storage.loadProject(id)).toMatchObject({ frame: { name: 'mine' } })
})
