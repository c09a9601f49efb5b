import fc from 'fast-check'
import { deleteDB } from 'idb'
import { expect, test } from 'vitest'
import { PIECES_LIMITS, TEXT_LIMITS } from '../../src/core/data/limits.ts'
import { createInProcessRunner } from '../../src/jobs/inProcess.ts'
import { createIndexedDbStorage } from '../../src/state/storage/indexedDb.ts'
import type { Storage } from '../../src/state/storage/storage.ts'
import { ACTS, anyAct, type ActKind } from '../support/anyAct.ts'
import { expectKept } from '../support/expectKept.ts'
import { box, merge, translate } from '../support/meshes.ts'
import { boxFile, fileOf, holding, startSession } from '../support/session.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

let databases = 0

/** A database of the browser's own, gone afterwards. */
async function withDatabase(work: (storage: Storage) => Promise<void>): Promise<void> {
  const name = `nothing lost ${(databases += 1)} ${performance.now()}`
  const storage = createIndexedDbStorage(name, { countedBuild: 'build' })
  try {
    await work(storage)
  } finally {
    await storage.close()
    await deleteDB(name)
  }
}

/** The frame as a later visit finds it. */
async function foundAgain(storage: Storage) {
  const { actions, state } = await startSession({ storage })
  actions.close()
  return { frame: state().frame, failures: state().failures }
}

test('whatever is done comes back from the browser’s own database, and from a file (seed 4)', async () => {
  const tried = new Set<ActKind>()
  await fc.assert(
    fc.asyncProperty(
      fc.boolean(),
      fc.array(anyAct, { minLength: 6, maxLength: 24 }),
      async (isFull, acts) => {
        await withDatabase((storage) => expectKept(storage, isFull, acts))
        for (const [kind] of acts) tried.add(kind)
      },
    ),
    { seed: 4, numRuns: 30 },
  )
  const changing = Object.keys(ACTS).filter((kind) =>
    /^(put|add|rename|update|weigh|set)/.test(kind),
  )
  expect(changing.filter((kind) => !tried.has(kind as ActKind))).toEqual([])
}, 240_000)

test('a note and names of 10,001 letters are refused with the reason, and nothing goes', async () => {
  await withDatabase(async (storage) => {
    const { actions, state } = await startSession({ storage })
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const { frame } = state()
    const [part] = frame.parts
    const long = 'x'.repeat(TEXT_LIMITS.note + 1)
    const expectRefused = () => {
      expect(state().notice?.text).toMatch(/^Nothing was changed: /)
      expect(state().frame).toEqual(frame)
      actions.dismissNotice()
    }
    actions.updateParts([part?.id ?? ''], { note: long })
    expectRefused()
    actions.updateParts([part?.id ?? ''], { name: long })
    expectRefused()
    actions.renameFrame(long)
    expectRefused()
    await actions.renameProject(frame.id, long)
    expectRefused()
    await actions.settled()
    actions.close()
    expect(await foundAgain(storage)).toEqual({ frame, failures: [] })
  })
})

const equalBoxes = (count: number) =>
  fileOf(
    'plate.stl',
    writeStlBinary(
      merge(
        Array.from({ length: count }, (_, i) =>
          translate(box(2, 2, 2), [4 * (i % 120), 4 * Math.floor(i / 120), 0]),
        ),
      ),
    ),
  )

test.each([
  // Copies of a plate of equal pieces, and what their taking apart is.
  [100, 120, 12_000, /^Made one row/],
  [100, 1001, null, /^Nothing was changed: .*quantity/],
  [12_000, 1, null, /left as it is: .* more than 400/],
])(
  'a plate of %i equal pieces, %i times, is taken apart and kept as %s pieces',
  async (pieces, copies, made, words) => {
    await withDatabase(async (storage) => {
      // Its layers are another matter.
      const { runner } = holding(createInProcessRunner())
      const { actions, state } = await startSession({ storage, runner })
      await actions.addFiles([equalBoxes(pieces)])
      const [{ id } = { id: '' }] = state().frame.parts
      actions.updateParts([id], { quantity: copies })
      const before = state().frame
      await actions.splitPlate(id)
      expect(state().notice?.text).toMatch(words)
      const { frame } = state()
      if (made === null) expect(frame).toBe(before)
      else expect(frame.parts).toMatchObject([{ quantity: made }])
      expect(PIECES_LIMITS.quantity.max).toBeLessThan(100 * 1001)
      await actions.flush()
      actions.close()
      expect(await foundAgain(storage)).toEqual({ frame, failures: [] })
    })
  },
)
