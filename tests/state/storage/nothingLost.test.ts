import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { CARBON_LIMITS, PIECES_LIMITS, RECIPE_LIMITS } from '../../../src/core/data/limits.ts'
import { FLIGHT_LIMITS, ITEM_LIMITS, TEXT_LIMITS } from '../../../src/core/data/limits.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTERS } from '../../../src/core/data/printers.ts'
import { parseFrame } from '../../../src/state/storage/parseFrame.ts'
import { createMemoryStorage } from '../../../src/state/storage/memoryStorage.ts'
import type { Session } from '../../../src/state/store/types.ts'
import { boxFile, startSession } from '../../support/session.ts'

/** Any number a hand or another program could bring: inside, at the ends, far outside, and none at all. */
const anyNumber = fc.oneof(
  fc.double(),
  fc.integer(),
  fc.constantFrom(0, -1, 1e-9, 0.5, 1e9, Number.MAX_VALUE, Number.NaN, Infinity),
  ...[RECIPE_LIMITS.layerMm, PIECES_LIMITS.quantity, CARBON_LIMITS.massG, ITEM_LIMITS.massG].map(
    ({ min, max }) => fc.constantFrom(min, max, min - 1, max + 1),
  ),
)
const anyText = fc.oneof(
  fc.string(),
  fc.constantFrom(200, 201, 2001, 10_000, 10_001).map((letters) => 'x'.repeat(letters)),
)

type Act = (actions: Session, ids: readonly string[]) => void

const numbers = fc.tuple(anyNumber, anyNumber, anyNumber)
const act: fc.Arbitrary<Act> = fc.oneof(
  anyText.map((name): Act => (actions) => {
    actions.renameFrame(name)
  }),
  fc.tuple(anyText, anyText).map(([name, note]): Act => (actions, ids) => {
    actions.updateParts(ids, { name })
    actions.updateParts(ids.slice(1), { note })
  }),
  numbers.map(([quantity, spares, mirrored]): Act => (actions, ids) => {
    actions.updateParts(ids, { quantity, spares, mirrored })
  }),
  numbers.map(([layerMm, walls, infillPct]): Act => (actions, ids) => {
    actions.updateParts(ids, { recipe: { layerMm, walls, infillPct } })
  }),
  numbers.map((rotateDeg): Act => (actions, ids) => {
    actions.updateParts(ids, { pose: { rotateDeg } })
  }),
  fc.tuple(anyText, numbers).map(([name, [value, diameterMm, flow]]): Act => (actions) => {
    const [first] = MATERIALS
    if (first === undefined) return
    const densityGCm3 = { ...first.densityGCm3, value }
    actions.putMaterial({ ...first, id: 'own', name, densityGCm3, diameterMm, flow })
  }),
  fc.tuple(anyText, numbers).map(([name, [wallMmS, powerW, clockFactor]]): Act => (actions) => {
    const [first] = PRINTERS
    if (first !== undefined) actions.putPrinter({ ...first, name, wallMmS, powerW, clockFactor })
  }),
  numbers.map(([electricityPerKwh, wearPerHour, wastePct]): Act => (actions) => {
    const failurePctPerHour = 1
    const currency = 'EUR'
    actions.putPrices({ currency, electricityPerKwh, wearPerHour, wastePct, failurePctPerHour })
  }),
  numbers.map(([massG, price]): Act => (actions) => {
    actions.putCarbon({ massG, price })
  }),
  fc.tuple(anyText, numbers).map(([name, [quantity, massG, costEach]]): Act => (actions) => {
    const kind = { group: 'other', status: 'estimated', basis: 'typed' } as const
    const item = { id: 'i', name, quantity, massG, costEach, positionMm: null, ...kind }
    actions.putAircraft({ items: [item] }, 'add an item')
  }),
  numbers.map(([limitG, motors, packMah]): Act => (actions) => {
    const rest = { motorThrustG: 620, propDiameterMm: 150, packCells: 3, voltsPerCell: 3.7 }
    const more = { usableShare: 0.8, avionicsW: 10, motorRadiusMm: FLIGHT_LIMITS.motorRadiusMm.max }
    actions.putAircraft({ flight: { motors, packMah, ...rest, ...more } }, 'change the flight')
    actions.putAircraft({ limitG }, 'change the limit')
  }),
  numbers.map(([scaleG, pieces, tareG]): Act => (actions, ids) => {
    const [id] = ids
    if (id !== undefined)
      actions.weighPart(id, { scaleG, pieces, tareG, stepG: 0.1, trusted: false })
  }),
  fc.constantFrom<Act>(
    (actions, ids) => {
      actions.duplicateParts(ids.slice(0, 2))
    },
    (actions, ids) => {
      actions.removeParts(ids.slice(2))
    },
    (actions) => {
      actions.undo()
    },
    (actions) => {
      actions.redo()
    },
  ),
)

describe('whatever the page accepts', () => {
  test('is the same when it is opened again, from the database and from a file (seed 9)', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 12 }), async (acts) => {
        const storage = createMemoryStorage()
        const { actions, state } = await startSession({ storage })
        await actions.addFiles([boxFile('bar.stl', 20, 8, 6), boxFile('rod.stl', 30, 4, 4)])
        for (const each of acts) {
          each(
            actions,
            state().frame.parts.map(({ id }) => id),
          )
        }
        const { frame } = state()
        // What a file holds is the frame as JSON, which makes null of NaN and infinity.
        // Nor does it know −0, which is the same number.
        const written: unknown = JSON.parse(JSON.stringify(frame))
        const opened = parseFrame(written)
        expect(opened).toEqual({ ok: true, value: { frame: written, complaints: [] } })
        await actions.flush()
        const again = await startSession({ storage })
        expect(again.state().failures).toEqual([])
        expect(again.state().frame).toEqual(frame)
        again.actions.close()
        actions.close()
      }),
      { seed: 9, numRuns: 40 },
    )
  })

  test('names and notes too long are refused and said, not cut', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const [part] = state().frame.parts
    actions.updateParts([part?.id ?? ''], { note: 'x'.repeat(TEXT_LIMITS.note + 1) })
    expect(state().frame.parts[0]).toBe(part)
    expect(state().notice?.text).toMatch(/^Nothing was changed: “bar” is out of range \(note/)
    actions.close()
  })

  test('what was saved before out of range is opened in range, and said; no part goes', async () => {
    const { actions, state } = await startSession()
    await actions.addFiles([boxFile('bar.stl', 20, 8, 6)])
    const { frame } = state()
    const parts = frame.parts.map((part) => ({
      ...part,
      quantity: 3_000_000,
      note: 'n'.repeat(10_001),
      recipe: { ...part.recipe, layerMm: 5, walls: 2.4 },
    }))
    const old = { ...frame, name: 'f'.repeat(10_001), parts, carbon: { massG: -3, price: 2 } }
    const opened = parseFrame(JSON.parse(JSON.stringify(old)))
    if (!opened.ok) throw new Error(opened.problem.message)
    expect(opened.value.frame.parts[0]).toMatchObject({
      quantity: PIECES_LIMITS.quantity.max,
      recipe: { layerMm: RECIPE_LIMITS.layerMm.max, walls: 2 },
    })
    expect(opened.value.frame.name).toHaveLength(TEXT_LIMITS.name)
    expect(opened.value.frame.carbon).toEqual({ massG: 0, price: 2 })
    const said = opened.value.complaints.join('\n')
    expect(said).toContain('quantity was 3000000, 100000 was taken')
    expect(said).toContain('recipe.layerMm was 5, 2 was taken')
    expect(said).toContain('note was too long and was cut')
    actions.close()
  })
})
