import { describe, expect, it } from 'vitest'
import {
  catalogueEntry,
  catalogueItem,
  nutSizes,
  screwSizes,
} from '../../../../src/core/aircraft/hardware/catalogue.ts'
import { stockedLengths } from '../../../../src/core/aircraft/hardware/data.ts'
import type { CatalogueChoice } from '../../../../src/core/aircraft/hardware/catalogue.ts'

const screw = (lengthMm: number): CatalogueChoice => ({
  kind: 'screw',
  standard: 'ISO 4762',
  size: 'M3',
  lengthMm,
  material: 'steel',
})
const nut: CatalogueChoice = { kind: 'nut', standard: 'ISO 4032', size: 'M3', material: 'steel' }
const standoff: CatalogueChoice = {
  kind: 'standoff',
  shape: 'round',
  size: 'M3',
  lengthMm: 35,
  material: 'aluminium',
}

describe('catalogueEntry', () => {
  it.each<[CatalogueChoice, string]>([
    [screw(10), 'Screw M3 × 10, socket head, steel (ISO 4762)'],
    [nut, 'Nut M3, steel (ISO 4032)'],
    [{ ...nut, standard: 'ISO 7040' }, 'Locknut M3, steel (ISO 7040)'],
    [{ kind: 'washer', size: 'M3', material: 'nylon' }, 'Washer M3, nylon (ISO 7089)'],
    [standoff, 'Standoff M3 × 35, round, aluminium'],
    [{ ...standoff, acrossMm: 6 }, 'Standoff M3 × 35, round 6 mm, aluminium'],
    [{ kind: 'insert', size: 'M3', lengthMm: 5.7 }, 'Heat-set insert M3 × 5.7, brass'],
    [
      { kind: 'tube', outerMm: 10, innerMm: 8, lengthMm: 200, material: 'carbon' },
      'Tube 10/8 × 200, carbon',
    ],
    [
      { kind: 'tube', outerMm: 3, innerMm: 0, lengthMm: 80, material: 'carbon' },
      'Rod 3 × 80, carbon',
    ],
  ])('names it plainly', (choice, name) => {
    expect(catalogueEntry(choice).name).toBe(name)
  })
})

describe('the whole catalogue', () => {
  const MATERIALS = ['steel', 'stainless', 'titanium', 'aluminium', 'brass', 'nylon'] as const
  const SIZES = ['M2', 'M2.5', 'M3', 'M4', 'M5'] as const
  const choices = MATERIALS.flatMap((material) => [
    ...(['ISO 4762', 'ISO 7380-1', 'ISO 10642'] as const).flatMap((standard) =>
      screwSizes(standard).flatMap((size) =>
        stockedLengths(size).map((lengthMm): CatalogueChoice => ({
          kind: 'screw',
          standard,
          size,
          lengthMm,
          material,
        })),
      ),
    ),
    ...(['ISO 4032', 'ISO 7040'] as const).flatMap((standard) =>
      nutSizes(standard).map((size): CatalogueChoice => ({
        kind: 'nut',
        standard,
        size,
        material,
      })),
    ),
    ...SIZES.flatMap((size): CatalogueChoice[] => [
      { kind: 'washer', size, material },
      { kind: 'standoff', shape: 'hex', size, lengthMm: 20, material },
      { kind: 'standoff', shape: 'round', size, lengthMm: 20, material },
      { kind: 'insert', size, lengthMm: 4 },
    ]),
  ])

  it('has a name, a mass, how it is known and its source for every line', () => {
    expect(choices.length).toBeGreaterThan(500)
    for (const choice of choices) {
      const { name, massG, basis, spreadPct, source } = catalogueEntry(choice)
      expect(massG, name).toBeGreaterThan(0.005)
      expect(massG, name).toBeLessThan(20)
      expect(['published', 'computed', 'memory'], name).toContain(basis)
      expect(spreadPct, name).toBeGreaterThanOrEqual(3)
      expect(source.length, name).toBeGreaterThan(20)
    }
  })

  it('calls published only steel rows of a table: 17 screws, 3 locknuts and 1 washer', () => {
    const published = choices.filter((choice) => catalogueEntry(choice).basis === 'published')
    const kinds = published.map(({ kind }) => kind)
    expect(kinds.filter((kind) => kind === 'screw')).toHaveLength(17)
    expect(kinds.filter((kind) => kind === 'nut')).toHaveLength(3)
    expect(kinds.filter((kind) => kind === 'washer')).toHaveLength(1)
    expect(published).toHaveLength(21)
  })

  it('keeps apart what was never read: washers and inserts of M2 and M2.5', () => {
    const names = choices
      .map((choice) => catalogueEntry(choice))
      .filter(({ basis }) => basis === 'memory')
      .map(({ name }) => name.replace(/,.*/, ''))
    expect([...new Set(names)].toSorted()).toEqual([
      'Heat-set insert M2 × 4',
      'Heat-set insert M2.5 × 4',
      'Washer M2',
      'Washer M2.5',
    ])
  })
})

describe('catalogueItem', () => {
  it('becomes an item that says how its mass is known', () => {
    expect(catalogueItem(screw(10), { id: 'a', quantity: 8, costEach: 0.05 })).toEqual({
      id: 'a',
      name: 'Screw M3 × 10, socket head, steel (ISO 4762)',
      group: 'fasteners',
      quantity: 8,
      massG: 0.9,
      costEach: 0.05,
      status: 'calculated',
      basis: 'published',
      positionMm: null,
    })
  })

  it('calls a size from memory estimated', () => {
    const choice = { kind: 'washer', size: 'M2', material: 'steel' } as const
    expect(catalogueItem(choice, { id: 'a', quantity: 1, costEach: 0 })).toMatchObject({
      status: 'estimated',
      basis: 'memory',
    })
  })

  it('weighs the hardware of a 250-size carbon frame between 24 and 34 g', () => {
    // PX4 docs, holybro_qav250_pixhawk4_mini.md, commit 4548d742: 6 standoffs 35 mm, 8 screws 15
    // mm, 8 nuts, 12 screws 7 mm.
    const bill = [
      catalogueItem(standoff, { id: '1', quantity: 6, costEach: 0 }),
      catalogueItem(screw(15), { id: '2', quantity: 8, costEach: 0 }),
      catalogueItem(nut, { id: '3', quantity: 8, costEach: 0 }),
      catalogueItem(screw(7), { id: '4', quantity: 12, costEach: 0 }),
    ]
    const totalG = bill.reduce((sum, item) => sum + item.massG * item.quantity, 0)
    expect(totalG).toBeGreaterThan(24)
    expect(totalG).toBeLessThan(34)
  })
})

it('offers only the sizes a standard has', () => {
  expect(screwSizes('ISO 4762')).toEqual(['M2', 'M2.5', 'M3', 'M4', 'M5'])
  expect(screwSizes('ISO 10642')).toEqual(['M3', 'M4', 'M5'])
  expect(nutSizes('ISO 7040')).toEqual(['M3', 'M4', 'M5'])
})
