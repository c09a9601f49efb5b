import { afterAll, describe, expect, it } from 'vitest'
import { frameBalance } from '../../src/core/aircraft/balance/frameBalance.ts'
import { partMoments } from '../../src/core/aircraft/balance/partMoments.ts'
import { readMesh } from '../../src/core/formats/read.ts'
import { mapPoint } from '../../src/core/mesh/rigidMaps.ts'
import { motionOfPlace } from '../../src/core/mesh/split/drawnPlace.ts'
import { unitToMm } from '../../src/core/model/units.ts'
import { bodyMiddle } from '../../src/core/joints/itemMesh.ts'
import { itemPieces } from '../../src/core/joints/itemPieces.ts'
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
  const files = drawAircraft(shop, aircraft)
  const joints = markJoints({ ...aircraft, parts }, files)
  const typed = aircraft.about.aircraft.places
  const bought = itemPieces(aircraft.about.aircraft.items)
  const placed = placePieces(
    [...parts.map(({ name, unit, quantity }) => ({ id: name, unit, quantity })), ...bought],
    typed.filter(({ partId }) => aircraft.roots.includes(partId)),
    joints,
  )

  it('put every piece, bought ones too, where it was drawn to sit, to 0.01 mm', () => {
    expect(placed.places).toHaveLength(typed.length)
    const kinds = [
      ...parts.map(({ name }) => ({ id: name, name })),
      ...bought.map(({ id, name }) => ({ id, name })),
    ]
    for (const { id, name } of kinds) {
      // A round cup may be turned any way.
      const of = (places: typeof typed, key: string) =>
        places.filter(({ partId }) => partId === key).map(motionOfPlace)
      const wanted = of(typed, name)
      for (const [i, { matrix, move }] of of(placed.places, id).entries()) {
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

  it('balance where sums over the drawing say, though joints alone place the pieces', () => {
    const lumps = parts.map(({ name, file, unit, quantity }) => {
      const { mesh, unit: stated } = readMesh(files.get(file) ?? new Uint8Array(), file)
      const moments = partMoments(mesh, unitToMm(stated ?? unit))
      return { partId: name, name, quantity, moments, massG: moments.volume.amount / 1000 }
    })
    const balance = frameBalance({
      parts: lumps.map((lump) => ({ ...lump, shellShare: 0 })),
      places: placed.places,
      items: aircraft.about.aircraft.items.filter(({ body }) => body !== undefined),
      motions: placed.motions,
      flight: null,
    })
    // Σ m p / Σ m over the places as typed, of which the joints have seen the roots alone.
    const bodies = aircraft.about.aircraft.items.flatMap(({ name, massG, body, positionMm }) => {
      if (body === undefined) return []
      const places = typed.filter(({ partId }) => partId === name)
      // One that lies in its bay is held by no joint.
      if (places.length === 0) return [{ massG, at: positionMm ?? ([0, 0, 0] as const) }]
      return places.map((place) => ({
        massG,
        at: mapPoint(motionOfPlace(place), bodyMiddle(body)),
      }))
    })
    const points = bodies.concat(
      lumps.flatMap(({ name, massG, moments }) =>
        typed
          .filter(({ partId }) => partId === name)
          .map((place) => ({ massG, at: mapPoint(motionOfPlace(place), moments.volume.centreMm) })),
      ),
    )
    const massG = points.reduce((sum, point) => sum + point.massG, 0)
    for (const k of [0, 1, 2] as const) {
      const mean = points.reduce((sum, point) => sum + point.massG * point.at[k], 0) / massG
      expect(Math.abs((balance?.cgMm[k] ?? 0) - mean)).toBeLessThan(0.01)
    }
    expect(balance?.massG).toBeCloseTo(massG, 9)
    expect(balance?.unplacedG).toBeCloseTo(0, 9)
  })
})
