import { expect, test } from 'vitest'
import { boxFile, startSession } from '../support/session.ts'

test('a part is not given a material that neither frame nor workshop holds: a reload made it PLA', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
  const { frame } = state()
  actions.updateParts([frame.parts[0]?.id ?? ''], { materialId: 'own' })
  expect(state().frame).toBe(frame)
  expect(state().notice?.text).toBe(
    'Nothing was changed: “bar” would be of a material that the frame does not hold.',
  )
})
