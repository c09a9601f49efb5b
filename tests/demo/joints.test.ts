import { afterAll, describe, expect, it } from 'vitest'
import { motionOfPlace } from '../../src/core/mesh/split/drawnPlace.ts'
import { placePieces } from '../../src/core/joints/placePieces.ts'
import { drawAircraft } from '../../src/demo/drawAircraft.ts'
import { markJoints } from '../../src/demo/markJoints.ts'
import { SANDPIPER } from '../../src/demo/sandpiper.ts'
import { TERN } from '../../src/demo/tern.ts'
import { openWorkshop } from '../../src/demo/workshop.ts'

const shop = await openWorkshop()
afterAll(() => shop.close())

describe.each([SANDPIPER, TERN])('the joints of $id', (aircraft) => {
  // The collar is drawn in inches; here its joints are marked as they are once that was said.
  const parts = aircraft.parts.map((part) => ({
    ...part,
    unit: aircraft.drawnIn[part.name] ?? part.unit,
  }))
  const joints = markJoints({ ...aircraft, parts }, drawAircraft(shop, aircraft))
  const typed = aircraft.about.aircraft.places
  const placed = placePieces(
    parts.map(({ name, unit, quantity }) => ({ id: name, unit, quantity })),
    typed.filter(({ partId }) => aircraft.roots.includes(partId)),
    joints,
  )

  it('put every piece where it was drawn to sit, to 0.01 mm', () => {
    expect(placed.places).toHaveLength(typed.length)
    for (const { name } of parts) {
      // A round cup may be turned any way.
      const of = (places: typeof typed) =>
        places.filter(({ partId }) => partId === name).map(motionOfPlace)
      const wanted = of(typed)
      for (const [i, { matrix, move }] of of(placed.places).entries()) {
        const other = wanted[i]!
        for (const k of [0, 1, 2]) {
          expect(Math.abs(move[k]! - other.move[k]!), `${name} ${i}`).toBeLessThan(0.01)
        }
        for (const [k, value] of matrix.entries()) {
          expect(Math.abs(value - other.matrix[k]!), `${name} ${i}`).toBeLessThan(1e-4)
        }
      }
    }
  })

  it('close every loop, and none leads nowhere', () => {
    for (const { misfitMm } of placed.loops) expect(misfitMm).toBeLessThan(0.01)
    expect(placed.idle).toEqual([])
  })
})
