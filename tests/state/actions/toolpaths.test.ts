import { gzipSync, strToU8 } from 'fflate'
import { expect, test } from 'vitest'
import { boxFile, fileOf, startSession } from '../../support/session.ts'
import { PLAIN, SMALL_BOX, writeBox } from '../../support/writeToolpath.ts'

const { sizeMm, layers, layerMm } = SMALL_BOX
const MESH = boxFile('box.stl', sizeMm[0], sizeMm[1], layers * layerMm)
const { text: TOOLPATH, filamentMm } = writeBox(SMALL_BOX, PLAIN)

test('a toolpath is read beside the part it prints, whichever came first', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('print.gcode', TOOLPATH), MESH, boxFile('other.stl', 9, 9, 9)])
  await actions.settled()
  const { toolpaths, frame, failures, incoming } = state()
  expect({ failures, incoming }).toEqual({ failures: [], incoming: [] })
  const [read] = toolpaths
  expect(frame.parts).toHaveLength(2)
  expect(read?.match?.item).toBe(frame.parts.find(({ name }) => name === 'box')?.id)
  expect(read?.figures.filamentM).toBeCloseTo(filamentMm / 1000, 4)
})

test('its recipe is taken in one step of undo, and only what its moves tell', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([MESH, fileOf('print.gcode', TOOLPATH)])
  const id = state().toolpaths[0]?.id ?? ''
  const before = state().frame
  actions.takeRecipe(id)
  const after = state().frame.parts[0]?.recipe
  expect(after).toMatchObject({
    layerMm: SMALL_BOX.layerMm,
    walls: SMALL_BOX.walls,
    topSkins: SMALL_BOX.topSkins,
    bottomSkins: SMALL_BOX.bottomSkins,
  })
  expect(Math.abs((after?.infillPct ?? 0) - 100 * SMALL_BOX.infill)).toBeLessThan(2)
  expect(after?.supportAngleDeg).toBe(before.parts[0]?.recipe.supportAngleDeg)
  actions.undo()
  expect(state().frame).toBe(before)
})

test('its habits and speeds go to the printer', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([fileOf('print.gcode', TOOLPATH)])
  const [read] = state().toolpaths
  const before = state().frame.printer
  actions.takeHabits(read?.id ?? '')
  const { printer } = state().frame
  expect(printer.skinMmS).toBe(read?.figures.kinds.skin.speedMmS)
  expect(printer.habits).toMatchObject(read?.figures.habits ?? {})
  expect(printer.travelMmS).toBe(before.travelMmS)
})

test('one packed with gzip is read; one cut short is told, and the others go on', async () => {
  const { actions, state } = await startSession()
  const packed = gzipSync(strToU8(TOOLPATH))
  await actions.addFiles([
    fileOf('cut.gcode.gz', packed.slice(0, packed.length / 2)),
    fileOf('whole.gcode.gz', packed),
  ])
  expect(state().toolpaths.map(({ fileName }) => fileName)).toEqual(['whole.gcode.gz'])
  expect(state().failures.map(({ fileName, problem }) => [fileName, problem.code])).toEqual([
    ['cut.gcode.gz', 'unreadable-file'],
  ])
})

test('one that lays nothing says so; put away it is gone', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([
    fileOf('empty.gcode', 'G28\nG1 X10 Y10 F3000\n'),
    fileOf('print.gcode', TOOLPATH),
  ])
  expect(state().failures.map(({ problem }) => problem.code)).toEqual(['no-volume'])
  actions.dismissToolpath(state().toolpaths[0]?.id ?? '')
  expect(state().toolpaths).toEqual([])
})

test('it is no zone', async () => {
  const { actions, state } = await startSession()
  await actions.addFiles([MESH])
  await actions.addZones(state().frame.parts[0]?.id ?? '', [fileOf('print.gcode', TOOLPATH)])
  expect(state().failures[0]?.problem.message).toBe(
    '“print.gcode” holds the moves of a printer, not a mesh.',
  )
})
