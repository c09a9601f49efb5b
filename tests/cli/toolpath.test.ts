import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { runPrice } from '../../src/cli/runPrice.ts'
import { box } from '../support/meshes.ts'
import { writeStl } from '../../src/core/formats/writeStl.ts'
import { SMALL_BOX, writeBox } from '../support/writeToolpath.ts'

const folder = mkdtempSync(join(tmpdir(), 'toolpath-'))
const { text, filamentMm } = writeBox(SMALL_BOX)
writeFileSync(join(folder, 'box.gcode'), text)
writeFileSync(join(folder, 'box.gcode.gz'), gzipSync(text))
writeFileSync(join(folder, 'letter.gcode'), 'Dear builder,\n')
writeFileSync(join(folder, 'nothing.gcode'), '')

async function price(...args: readonly string[]) {
  let [out, err] = ['', '']
  const code = await runPrice(args, {
    base: folder,
    locale: 'en-GB',
    out: (said) => (out += said),
    err: (said) => (err += said),
    onProgress: () => {},
  })
  return { code, out, err }
}

test('tells plastic, time, recipe and habits as JSON, packed or not', async () => {
  const plain = await price('--toolpath', 'box.gcode', '--json', '--material', 'petg')
  expect(plain.code).toBe(0)
  const told = JSON.parse(plain.out)
  expect(told.filamentM).toBeCloseTo(filamentMm / 1000, 5)
  // A cylinder: πd²/4 × length.
  expect(told.depositMm3).toBeCloseTo(((Math.PI * 1.75 ** 2) / 4) * filamentMm, 1)
  expect(told.massG.low).toBeLessThan(told.massG.mid)
  expect(told.layers).toBe(20)
  expect(told.timeS).toBeGreaterThan(0)
  expect(told.recipe).toEqual({
    layerMm: 0.2,
    firstLayerMm: 0.2,
    lineMm: expect.closeTo(0.45, 2),
    walls: 2,
    topSkins: 4,
    bottomSkins: 3,
    infillPct: expect.closeTo(20, -1),
    pattern: 'lines',
  })
  expect(told.habits.outerWidthShare).toBeCloseTo(1, 2)
  const packed = await price('--toolpath', 'box.gcode.gz', '--json', '--material', 'petg')
  expect({ ...JSON.parse(packed.out), file: '' }).toEqual({ ...told, file: '' })
})

test('tells the same as text', async () => {
  const { out } = await price('--toolpath', 'box.gcode')
  expect(out).toMatch(/walls +2\n/)
  expect(out).toMatch(/skins +3 below, 4 on top/)
  expect(out).toMatch(/infill +(19|20|21)[.\d]* %, Lines/)
})

test('tells which of the meshes it prints, whichever way up that was drawn', async () => {
  // 40 × 30 × 4 lying and standing, and two that are a millimetre other.
  for (const [name, mesh] of [
    ['lies.stl', box(40, 30, 4)],
    ['stands.stl', box(4, 40, 30)],
    ['wider.stl', box(41, 30, 4)],
    ['taller.stl', box(40, 30, 5)],
  ] as const) {
    writeFileSync(join(folder, name), writeStl(mesh))
  }
  const told = async (...meshes: readonly string[]) =>
    JSON.parse((await price('--toolpath', 'box.gcode', '--json', ...meshes)).out).part
  const lies = await told('wider.stl', 'taller.stl', 'lies.stl')
  expect(lies).toMatchObject({ file: 'lies.stl', alike: [] })
  expect(await told('taller.stl', 'stands.stl')).toMatchObject({ file: 'stands.stl' })
  expect(await told('wider.stl', 'taller.stl')).toBeNull()
  // Walls of a box: two loops of 140 and 136.4 mm, less half a line at each end of each side.
  const wallMm3 = 20 * 0.2 * 0.45 * (2 * (39.55 + 29.55) + 2 * (38.65 + 28.65))
  expect(lies.laid.wallMm3).toBeCloseTo(wallMm3, 0)
  expect(Math.abs(lies.counted.wallMm3 / wallMm3 - 1)).toBeLessThan(0.01)
  // Skins of 40 − 4 × 0.45 by 30 − 4 × 0.45; of the seven the first over rooms is in strands, ×
  // 1.3.
  const skinMm3 = (6 + 1.3) * 0.2 * (40 - 1.8) * (30 - 1.8)
  expect(Math.abs(lies.counted.skinMm3 / skinMm3 - 1)).toBeLessThan(0.03)
})

test('names a file that is none, and what does not go with it', async () => {
  const letter = await price('--toolpath', 'letter.gcode')
  expect(letter).toMatchObject({ code: 1, out: '' })
  expect(letter.err).toMatch(/^letter\.gcode: The file holds no moves/)
  const nothing = await price('--toolpath', 'nothing.gcode')
  expect([nothing.code, nothing.err]).toEqual([
    1,
    'nothing.gcode: It is 0 bytes long. Save it again.\n',
  ])
  expect((await price('--toolpath', 'gone.gcode')).err).toMatch(
    /^gone\.gcode: It cannot be read: there is no “.*gone\.gcode”\./,
  )
  expect((await price('--toolpath', '.')).err).toMatch(/^\.: It cannot be read: it is a folder\./)
  expect(await price('--toolpath', 'box.gcode', '--recipe', 'arm')).toMatchObject({ code: 2 })
})

test('names a mesh it cannot use, and tells the rest all the same', async () => {
  const args = ['--toolpath', 'box.gcode', '--json', 'letter.gcode', 'gone.stl', 'lies.stl']
  const { code, out, err } = await price(...args)
  expect(code).toBe(1)
  expect(JSON.parse(out)).toMatchObject({ file: 'box.gcode', part: { file: 'lies.stl' } })
  const [letter, gone] = err.split('\n')
  expect(letter).toMatch(/^letter\.gcode: .*not STL, OBJ or 3MF/)
  expect(gone).toMatch(/^gone\.stl: The file could not be read: there is no “.*gone\.stl”/)
})
