import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRINTERS } from '../../src/core/data/printers.ts'
import { RECIPE_DEFAULTS } from '../../src/core/model/settings.ts'
import type { DemoManifest } from '../../src/demo/manifest.ts'

const folder = new URL('../../public/demo/', import.meta.url)
const load = (id: string) =>
  JSON.parse(readFileSync(new URL(`${id}.json`, folder), 'utf8')) as DemoManifest

describe.each(['sandpiper', 'tern'])('manifest of %s', (id) => {
  const manifest = load(id)

  it('names files, materials and a printer that exist', () => {
    expect(manifest.labelledSample).toBe(true)
    expect(PRINTERS.map((printer) => printer.id)).toContain(manifest.printer)
    for (const part of manifest.parts) {
      expect(existsSync(new URL(part.file, folder))).toBe(true)
      expect(MATERIALS.map((material) => material.id)).toContain(part.material)
    }
  })

  it('states every setting, so that a changed default changes nothing', () => {
    for (const part of manifest.parts) {
      expect(Object.keys(part.recipe).toSorted()).toEqual(Object.keys(RECIPE_DEFAULTS).toSorted())
      expect(part.mirrored).toBeLessThanOrEqual(part.quantity)
    }
  })

  it('tells parts and only parts by name, each item once, with no more places than pieces', () => {
    const { items, weighedG, places, season } = manifest.aircraft
    const pieces = new Map(manifest.parts.map((part) => [part.name, part.quantity]))
    const named = [...Object.keys(weighedG), ...Object.keys(season.breakShare)]
    for (const name of [...named, ...places.map(({ partId }) => partId)]) {
      expect(pieces.has(name), name).toBe(true)
    }
    for (const [name, quantity] of pieces) {
      expect(places.filter(({ partId }) => partId === name).length).toBeLessThanOrEqual(quantity)
    }
    expect(new Set(items.map(({ id: itemId }) => itemId)).size).toBe(items.length)
    expect(items.every(({ id: itemId }) => itemId.startsWith('sample-'))).toBe(true)
    expect(items.every(({ status }) => status === 'estimated')).toBe(true)
  })

  it('says in its story that it is invented', () => {
    expect(manifest.story).toMatch(/^An invented sample\./)
  })
})

it('lets the visitor meet the inch part: its manifest does not give the unit away', () => {
  const collar = load('sandpiper').parts.find((part) => part.file === 'pivot-collar.stl')
  expect(collar?.unit).toBe('millimetre')
  expect(load('sandpiper').story).toContain('drawn in inches')
})

it('adds up the bought items that are typed; screws come from the joints', () => {
  const bought = (id: string) =>
    load(id).aircraft.items.reduce((sum, item) => sum + item.quantity * item.massG, 0)
  expect(bought('sandpiper')).toBeCloseTo(432.48, 6)
  expect(bought('tern')).toBeCloseTo(347, 6)
})
