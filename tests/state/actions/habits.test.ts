import { expect, test } from 'vitest'
import { ledgerRows } from '../../../src/state/store/derived.ts'
import { boxFile, startSession } from '../../support/session.ts'

test('a habit of the printer reaches every part: figures at once, layers counted anew if they hang on it', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([boxFile('arm.stl', 60, 14, 8), boxFile('deck.stl', 40, 40, 6)])
  await actions.settled()
  const printer = () => state().frame.printer
  const masses = () => ledgerRows(state()).map((row) => row.figures!.massG.mid)
  const censuses = () =>
    state().frame.parts.map(({ id }) => {
      const work = state().work[id]
      return work?.kind === 'done' ? work.census : null
    })
  const usual = masses()
  const counted = censuses()

  // Nothing joined: less plastic, at once.
  actions.putPrinter({ ...printer(), habits: { joinedShare: 0 } })
  const bare = masses()
  expect(bare.every((mass, i) => mass < usual[i]!)).toBe(true)
  expect(ledgerRows(state()).map(({ stale }) => stale)).toEqual([false, false])
  await actions.settled()
  expect(masses()).toEqual(bare)
  expect(censuses().every((census, i) => census === counted[i])).toBe(true)

  // Infill over half a line of wall: the layers are counted anew, with larger rooms inside the same
  // walls.
  actions.putPrinter({ ...printer(), habits: { joinedShare: 0, overlapShare: 0.5 } })
  await actions.settled()
  expect(masses().every((mass, i) => mass > bare[i]!)).toBe(true)
  expect(censuses().map((census) => census!.wallMm3)).toEqual(
    counted.map((census) => census!.wallMm3),
  )
  expect(censuses().every((census, i) => census!.roomMm3 > counted[i]!.roomMm3)).toBe(true)

  actions.undo()
  await actions.settled()
  expect(masses()).toEqual(bare)
  actions.undo()
  await actions.settled()
  expect(masses()).toEqual(usual)
  expect(printer().habits).toBeUndefined()
})
