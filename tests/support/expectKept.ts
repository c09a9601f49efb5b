import { expect } from 'vitest'
import type { Arbitrary } from 'fast-check'
import type { Storage } from '../../src/state/storage/storage.ts'
import type { AppState } from '../../src/state/store/types.ts'
import type { Workshop } from '../../src/state/store/workshop.ts'
import { anyDemo, type anyAct } from './anyAct.ts'
import { fillFrame } from './fullFrame.ts'
import { startSession } from './session.ts'

type Acts = readonly (typeof anyAct extends Arbitrary<infer T> ? T : never)[]

/**
 * Does all this on a frame, empty or full, and expects the same state back: on the next visit over
 * the same storage, and from the saved file on another machine.
 */
export async function expectKept(storage: Storage, isFull: boolean, acts: Acts): Promise<void> {
  const { actions, state } = await startSession({ storage, demos: anyDemo, newId: idsOf('first') })
  // A frame to which nothing was ever done is not kept; nor is one of which all was undone.
  actions.renameFrame('Begun')
  if (isFull) await fillFrame(actions, state)
  for (const [, act] of acts) await act({ actions, state })
  await actions.settled()
  const { frame, workshop } = state()
  expect(state().storage).toEqual({ kind: 'saved' })

  const again = await startSession({ storage, newId: idsOf('again') })
  await again.actions.settled()
  expect(again.state().failures).toEqual([])
  const isBlank = frame.name !== 'Begun' && frame.parts.length === 0
  expect(again.state().frame).toEqual(isBlank ? { ...frame, id: again.state().frame.id } : frame)
  expect(ofOthers(again.state())).toEqual(ofOthers({ frame, workshop }))
  again.actions.close()

  const blob = await actions.saveProject()
  const other = await startSession({ newId: idsOf('other') })
  await other.actions.openProject({ name: 'saved.preweigh', blob })
  await other.actions.settled()
  expect(other.state().failures).toEqual([])
  // JSON knows no −0, which is the same number.
  expect(other.state().frame).toEqual(JSON.parse(JSON.stringify(frame)))
  const lost = Object.values(other.state().work).filter((work) => {
    return work.kind === 'failed' && work.problem.code === 'missing-mesh'
  })
  expect(lost).toEqual([])
  other.actions.close()
  actions.close()
}

/** The workshop without what the present frame teaches: that is read anew from its readings. */
function ofOthers({ frame, workshop }: Pick<AppState, 'frame' | 'workshop'>): Workshop {
  const isOwn = ({ id }: { readonly id: string }) => id.startsWith(`${frame.id}/`)
  return { ...workshop, lessons: workshop.lessons.filter((lesson) => !isOwn(lesson)) }
}

/** No two visits give out the same id. */
function idsOf(visit: string): () => string {
  let count = 0
  return () => `${visit} ${(count += 1)}`
}
