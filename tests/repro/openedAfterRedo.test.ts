import { expect, test } from 'vitest'
import { createMemoryStorage } from '../../src/state/storage/memoryStorage.ts'
import { boxFile, startSession } from '../support/session.ts'

// The frame of before, not changed but gone back to for a moment, was noted as the one opened last.
test('a frame that was left by undo and come back to by redo is the one of the next visit', async () => {
  const storage = createMemoryStorage()
  let count = 0
  const newId = () => `id ${++count}`
  const { actions, state } = await startSession({ storage, newId })
  await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
  await actions.settled()
  const first = state().frame.id
  await actions.openProject({ name: 'saved.preweigh', blob: await actions.saveProject() })
  const opened = state().frame.id
  expect(opened).not.toBe(first)
  actions.undo()
  expect(state().frame.id).toBe(first)
  actions.redo()
  await actions.settled()
  actions.close()

  const again = await startSession({ storage, newId })
  await again.actions.settled()
  expect(again.state().frame.id).toBe(opened)
  again.actions.close()
})
