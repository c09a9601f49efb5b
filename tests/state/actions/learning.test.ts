import { describe, expect, test } from 'vitest'
import { blockMesh, CALIBRATION_WALK } from '../../../src/core/calibration/walk.ts'
import { writeStl } from '../../../src/core/formats/writeStl.ts'
import { frameSum } from '../../../src/state/store/derived.ts'
import { boxFile, startSession } from '../../support/session.ts'

const ON_SCALE = { pieces: 1, tareG: 0, stepG: 0.1, trusted: false }
const deck = () => boxFile('deck.stl', 60, 40, 4)

async function weighedFrame() {
  const session = await startSession()
  await session.actions.addFiles([deck(), boxFile('arm.stl', 80, 14, 5)])
  await session.actions.settled()
  const [first, second] = session.state().frame.parts
  if (first === undefined || second === undefined) throw new Error('two parts expected')
  const pieceOf = (id: string) =>
    frameSum(session.state()).rows.find(({ part }) => part.id === id)?.pieceG.mid ?? Number.NaN
  const before = pieceOf(second.id)
  const calculated = pieceOf(first.id)
  session.actions.weighPart(first.id, { ...ON_SCALE, scaleG: 1.08 * calculated })
  return { ...session, first, second, before, calculated, pieceOf }
}

describe('a weighing', () => {
  test('stands for its part, tells on the others and is kept with what was weighed', async () => {
    const { state, actions, first, second, before, calculated, pieceOf } = await weighedFrame()
    expect(pieceOf(first.id)).toBeCloseTo(1.08 * calculated, 9)
    expect(pieceOf(second.id)).toBeGreaterThan(1.05 * before)
    const [weighed] = state().frame.parts
    expect(weighed?.weighIn).toMatchObject({ pieces: 1, stepG: 0.1, tareG: 0 })
    expect(weighed?.weighIn?.calculatedG).toBeCloseTo(calculated, 9)
    expect(weighed?.weighIn?.date).toMatch(/^\d{4}-\d\d-\d\d$/)
    actions.undo()
    expect(pieceOf(second.id)).toBe(before)
    actions.close()
  })

  test('of a set is the mean of its pieces, tare off', async () => {
    const { state, actions, first, calculated, pieceOf } = await weighedFrame()
    const scaleG = 4 * 1.02 * calculated + 250
    actions.weighPart(first.id, { ...ON_SCALE, scaleG, pieces: 4, tareG: 250 })
    expect(pieceOf(first.id)).toBeCloseTo(1.02 * calculated, 9)
    expect(state().frame.parts[0]?.weighIn).toMatchObject({ pieces: 4, tareG: 250 })
    actions.weighPart(first.id, null)
    expect(state().frame.parts[0]).not.toHaveProperty('weighIn')
    expect(pieceOf(first.id)).toBeCloseTo(calculated, 9)
    actions.close()
  })

  test('of less than its tare is refused with a reason', async () => {
    const { state, actions, first } = await weighedFrame()
    const { frame } = state()
    actions.weighPart(first.id, { ...ON_SCALE, scaleG: 10, tareG: 10 })
    expect(state().frame).toBe(frame)
    expect(state().notice?.text).toContain('tare')
    actions.close()
  })

  test('teaches the next frame of the same spool and printer, until it is told to forget', async () => {
    const { state, actions, before } = await weighedFrame()
    expect(state().workshop.lessons).toHaveLength(1)
    actions.newFrame()
    await actions.addFiles([boxFile('arm.stl', 80, 14, 5)])
    await actions.settled()
    const { rows, learned } = frameSum(state())
    expect(rows[0]?.pieceG.mid).toBeGreaterThan(1.05 * before)
    expect(rows[0]?.figures?.massG.mid).toBeCloseTo(before, 9)
    expect(learned).toMatchObject([{ from: 1 }])
    const [lesson] = state().workshop.lessons
    actions.forgetLessons(lesson?.materialIds[0] ?? '', lesson?.printerId ?? '')
    expect(frameSum(state()).rows[0]?.pieceG.mid).toBeCloseTo(before, 9)
    actions.close()
  })

  test('of the whole frame and a timed print teach the next frame too', async () => {
    const { state, actions, first, before, calculated } = await weighedFrame()
    actions.weighPart(first.id, null)
    const calculatedG = calculated + before
    const whole = {
      id: 'w',
      of: 'printed',
      scaleG: 1.07 * calculatedG,
      tareG: 0,
      stepG: 0.1,
    } as const
    const clock = { id: 'c', pieces: { [first.id]: 1 }, timeS: 1.2e4, calculatedS: 1e4 }
    actions.putReadings(
      {
        wholes: [{ ...whole, date: null, calculatedG, trusted: false }],
        clocks: [{ ...clock, date: null, trusted: false }],
      },
      'weigh and time',
    )
    expect(state().workshop.lessons.map(({ id, of }) => [id.split('/')[1], of])).toEqual([
      ['w', 'mass'],
      ['c', 'time'],
    ])
    actions.newFrame()
    await actions.addFiles([boxFile('arm.stl', 80, 14, 5)])
    await actions.settled()
    const { rows, learned, learnedHours } = frameSum(state())
    expect(rows[0]?.pieceG.mid).toBeGreaterThan(1.03 * before)
    expect(rows[0]!.flying.timeS.mid).toBeGreaterThan(1.05 * rows[0]!.figures!.timeS.mid)
    expect([learned[0]?.from, learnedHours?.from]).toEqual([1, 1])
    actions.forgetLessons(null, state().frame.printer.id)
    expect(frameSum(state()).learnedHours).toBeNull()
    expect(frameSum(state()).learned).toHaveLength(1)
    actions.close()
  })

  test('taken back teaches nothing any more', async () => {
    const { state, actions, first } = await weighedFrame()
    actions.weighPart(first.id, null)
    expect(state().workshop.lessons).toEqual([])
    actions.close()
  })
})

describe('a print by the clock', () => {
  test('tells on the hours of all the others', async () => {
    const { state, actions, first, second } = await weighedFrame()
    const timeOf = (id: string) =>
      frameSum(state()).rows.find(({ part }) => part.id === id)?.flying.timeS.mid ?? Number.NaN
    const [deckS, armS] = [timeOf(first.id), timeOf(second.id)]
    const clock = { id: 'c', pieces: { [first.id]: 1 }, timeS: 1.2 * deckS, calculatedS: deckS }
    actions.putReadings({ clocks: [{ ...clock, date: null, trusted: false }] }, 'keep a time')
    expect(timeOf(second.id)).toBeGreaterThan(1.1 * armS)
    expect(timeOf(second.id)).toBeLessThan(1.2 * armS)
    actions.undo()
    expect(timeOf(second.id)).toBe(armS)
    actions.close()
  })
})

describe('the calibration pieces', () => {
  test('become a frame of their own on the printer and of the plastic in use', async () => {
    const { state, actions } = await weighedFrame()
    const { printer, parts } = state().frame
    actions.updateParts([parts[0]?.id ?? ''], { materialId: 'petg' })
    const pieces = CALIBRATION_WALK.flatMap((print) => print.pieces)
    await actions.loadPieces(
      'Calibration',
      pieces.map(({ name, tells, recipe, sizeMm }) => ({
        file: { name: `${name}.stl`, blob: new Blob([writeStl(blockMesh([{ sizeMm }]))]) },
        name,
        note: tells,
        recipe,
      })),
    )
    await actions.settled()
    const { frame } = state()
    expect(frame.parts.map(({ name, materialId }) => [name, materialId])).toEqual([
      ['Tube', 'petg'],
      ['Plate', 'petg'],
      ['Comb', 'petg'],
    ])
    expect(frame.printer).toBe(printer)
    const [tube] = frameSum(state()).rows
    // One line of 0.4 mm along 4 × 79.6 mm, 40 mm high, of 1.27 g/cm³.
    expect(tube?.figures?.massG.mid).toBeCloseTo(0.4 * 4 * 79.6 * 40 * 0.00127, 1)
    actions.close()
  })
})
