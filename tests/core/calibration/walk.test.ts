import { describe, expect, it } from 'vitest'
import { CALIBRATION_WALK, blockMesh } from '../../../src/core/calibration/walk.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import type { Form } from '../../../src/core/doubt/form.ts'
import { formOf } from '../../../src/core/doubt/form.ts'
import type { DoubtLine } from '../../../src/core/doubt/lines.ts'
import { scaleNoiseG } from '../../../src/core/doubt/readings.ts'
import type { Reading } from '../../../src/core/doubt/readings.ts'
import { understand } from '../../../src/core/doubt/understand.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { measureMesh } from '../../../src/core/mesh/measure.ts'
import { materialOf } from '../../support/ledgerParts.ts'

const pla = materialOf('pla')
const pieces = CALIBRATION_WALK.flatMap((print) => print.pieces)
const figuresOf = ({ sizeMm, recipe }: (typeof pieces)[number]) =>
  partFigures(
    countAllLayers(blockMesh([{ sizeMm }]), recipe),
    recipe,
    pla,
    PRINTER_DEFAULT,
    PRICES_DEFAULTS,
  )
const FIGURES = pieces.map(figuresOf)
const PRINTS = [[0, 1], [2]] as const

const massLines = pieces.map(({ name }, i): DoubtLine => {
  const { massG, doubt } = FIGURES[i]!
  return { id: name, name, quantity: 1, each: massG.mid, doubt: doubt.mass, scatter: 0.005 }
})
const timeLines = pieces.map(({ name }, i): DoubtLine => {
  const { timeS, doubt } = FIGURES[i]!
  return { id: `t ${name}`, name, quantity: 1, each: timeS.mid, doubt: doubt.time, scatter: 0 }
})

/**
 * What scale and clock say when each of these errors is so many deviations off, and nothing else
 * is.
 */
function readingsWhen(off: Readonly<Record<string, number>>): Reading[] {
  const truth = ({ each, doubt }: DoubtLine): number =>
    doubt.shared.reduce((mass, { id, effect }) => {
      const kind = id.slice(0, id.indexOf(':'))
      return mass * (1 + effect * (off[kind] ?? 0))
    }, each)
  return [
    ...massLines.map((line): Reading => {
      const value = truth(line)
      const of = { kind: 'pieces', lineId: line.id, pieces: 1 } as const
      return { id: line.id, value, noise: scaleNoiseG(value, 0.1, false), of, trusted: false }
    }),
    ...PRINTS.map((print, i): Reading => {
      const lines = print.map((at) => timeLines[at]!)
      const value = lines.reduce((sum, line) => sum + truth(line), 0)
      const of = { kind: 'whole', lineIds: lines.map(({ id }) => id), unlisted: 0 } as const
      return { id: `clock ${i}`, value, noise: 30, of, trusted: false }
    }),
  ]
}

const known = (off: Readonly<Record<string, number>>) =>
  understand([...massLines, ...timeLines], readingsWhen(off))
/** An error by itself, in deviations. */
const error = (kind: string): Form => {
  const ids = [...massLines, ...timeLines].flatMap(({ doubt }) => doubt.shared.map(({ id }) => id))
  const found = ids.find((id) => id.startsWith(`${kind}:`))
  return formOf(0, [[found ?? '', 1]])
}

describe('the calibration walk', () => {
  it('is made of closed blocks that stand apart', () => {
    for (const { pieces: together } of CALIBRATION_WALK) {
      const { volumeMm3, watertight } = measureMesh(blockMesh(together), 1)
      const byHand = together.reduce((sum, { sizeMm: [w, d, h] }) => sum + w * d * h, 0)
      expect(volumeMm3).toBeCloseTo(byHand, 6)
      expect(watertight).toBe(true)
    }
  })

  it('costs under two hours and under 40 g', () => {
    const sum = (pick: (figures: (typeof FIGURES)[number]) => number) =>
      FIGURES.reduce((total, figures) => total + pick(figures), 0)
    expect(sum(({ timeS }) => timeS.mid)).toBeLessThan(2 * 3600)
    expect(sum(({ spoolG }) => spoolG.high)).toBeLessThan(40)
  })

  it.each([
    // How a line ends, square or round, makes plates as packing does; while it is unknown it takes
    // a share of the blame.
    ['packing', 'packing', 0.9, ['ends', 'pace']],
    ['ends', 'ends', 1.2, ['packing', 'pace']],
    ['pace', 'pace', 1.2, ['packing', 'ends', 'acceleration']],
    ['acceleration', 'acceleration', 1.2, ['packing', 'ends', 'pace']],
  ] as const)(
    'tells %s from the rest when it alone is two deviations off',
    (_, kind, least, others) => {
      const { bell } = known({ [kind]: 2 })
      expect(bell(error(kind)).mean).toBeGreaterThan(least)
      for (const other of others) expect(Math.abs(bell(error(other)).mean)).toBeLessThan(0.4)
    },
  )
})

describe('without the other print', () => {
  it('packing and plastic pushed, pace and acceleration, cannot be told apart', () => {
    const off = readingsWhen({ packing: 2, acceleration: 2 })
    const plateOnly = off.filter(({ id }) => id === 'Plate')
    const alone = understand(massLines, plateOnly)
    expect(alone.bell(error('packing')).mean).toBeLessThan(1)
    expect(alone.bell(error('density')).mean).toBeGreaterThan(0.4)
    const combClock = off.filter(({ id }) => id === 'clock 1')
    const late = understand(timeLines, combClock)
    expect(late.bell(error('pace')).mean).toBeGreaterThan(0.6)
  })
})
