import { existsSync, readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import type { ToolpathFigures } from '../../../src/core/model/toolpath.ts'
import { toolpathReader } from '../../../src/core/toolpath/readToolpath.ts'

/*
 * Toolpaths that real parts were printed with, with the settings their makers state and the plastic
 * measured on them. They are no part of this repository: read where they lie, left out aloud where
 * they do not. All of them were looked at while the rules were made, so this holds what was reached;
 * it says nothing of files not seen.
 */
const FOLDER = '../shared/toolpaths/'
const LIST = `${FOLDER}pairs.json`

interface Stated {
  readonly use: Record<'walls' | 'top' | 'bottom' | 'infill', number>
  readonly stated: Record<'layer' | 'first' | 'dia', number>
  readonly seen: { readonly E: number; readonly beads: Record<'walls' | 'solid inside', number> }
}

/** Name, and what its moves tell: its walls, its skins and infill too, or not even all walls. */
const FILES = [
  ['ThunderFly-aerospace__888_1006', 'all'],
  ['ThunderFly-aerospace__888_2013', 'all'],
  ['ThunderFly-aerospace__888_3012', 'all'],
  ['ThunderFly-aerospace__encoder_holding_plate', 'all'],
  ['KravitzLabDevices__FED3_Sept2020_door', 'all'],
  // Solid all through, or with rooms no wider than a few lines.
  ['ThunderFly-aerospace__888_1023', 'walls'],
  ['KravitzLabDevices__FED3angled_August2020_disk', 'walls'],
  ['ThunderFly-aerospace__888_1031_pipe', 'walls'],
] as const

const pairs: Record<string, Stated> = existsSync(LIST)
  ? (JSON.parse(readFileSync(LIST, 'utf8')) as Record<string, Stated>)
  : {}

function read(name: string): ToolpathFigures {
  const reader = toolpathReader({
    accelMmS2: 1000,
    wallAccelMmS2: 1000,
    travelAccelMmS2: 1000,
    cornerMmS: 8,
    diameterMm: null,
  })
  reader.push(gunzipSync(readFileSync(`${FOLDER}${name}.gcode.gz`)))
  return reader.end()
}

const there = existsSync(LIST)
describe.skipIf(!there)(`a real toolpath${there ? '' : ` is not looked at: no ${LIST}`}`, () => {
  test.each(FILES)('%s tells how it was made', (name, tells) => {
    const { use, stated, seen } = pairs[name]!
    const { recipe, filamentM, diameterMm, kinds } = read(name)
    expect(Math.abs((1000 * filamentM) / seen.E - 1)).toBeLessThan(0.01)
    expect(diameterMm).toBe(stated.dia)
    expect(recipe).toMatchObject({
      layerMm: stated.layer,
      firstLayerMm: stated.first,
      walls: use.walls,
      topSkins: tells === 'all' ? use.top : null,
      bottomSkins: tells === 'all' ? use.bottom : null,
    })
    if (tells === 'all') expect(Math.abs(recipe.infillPct! - use.infill)).toBeLessThan(2)
    else expect(recipe.infillPct).toBeNull()
    // Means over places here, the commonest line there.
    expect(Math.abs(kinds.skin.widthMm! / seen.beads['solid inside'] - 1)).toBeLessThan(0.05)
  })
})
