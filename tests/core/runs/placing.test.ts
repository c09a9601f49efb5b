import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { placeMesh } from '../../../src/core/mesh/pose.ts'
import { POSE_AS_DRAWN } from '../../../src/core/model/settings.ts'
import type { Spot } from '../../../src/core/model/runs.ts'
import { bedFaults } from '../../../src/core/runs/bedFaults.ts'
import { handRuns, restOf } from '../../../src/core/runs/handRuns.ts'
import { turnedBox } from '../../../src/core/runs/hull.ts'
import { middleOf, moveTo, turnTo } from '../../../src/core/runs/moveSpot.ts'
import { nest } from '../../../src/core/runs/nest.ts'
import { outlineOf } from '../../../src/core/runs/outline.ts'
import type { LaidPart } from '../../../src/core/runs/types.ts'
import { box, prism, tube } from '../../support/meshes.ts'

const BED = { widthMm: 120, depthMm: 100, heightMm: 100, marginMm: 3 }
const outlines = {
  slab: outlineOf(placeMesh(box(30, 12, 4), 1, POSE_AS_DRAWN))!,
  ring: outlineOf(placeMesh(tube(14, 9, 4, 48), 1, POSE_AS_DRAWN))!,
  angle: outlineOf(
    placeMesh(
      prism(
        [
          [0, 0],
          [40, 0],
          [40, 8],
          [8, 8],
          [8, 30],
          [0, 30],
        ],
        4,
      ),
      1,
      POSE_AS_DRAWN,
    ),
  )!,
}
type Kind = keyof typeof outlines
const pieceOf = (id: string, brimMm = 0) => ({ outline: outlines[id as Kind], brimMm })
const turns = fc.integer({ min: 0, max: 359 })

describe('pieces placed by hand', () => {
  test('what the placement lays lies on nothing and over no edge, whatever gap and brim', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom<Kind>('slab', 'ring', 'angle'), { minLength: 1, maxLength: 12 }),
        fc.constantFrom(1.5, 2, 5),
        fc.constantFrom(0, 3),
        fc.nat(1),
        (kinds, gapMm, brimMm, mirrored) => {
          const parts = (Object.keys(outlines) as Kind[]).map((id): LaidPart => {
            const count = kinds.filter((kind) => kind === id).length
            return { id, count, outline: outlines[id], brimMm, mirrored: Math.min(count, mirrored) }
          })
          for (const spots of nest(parts, BED, { gapMm, passes: 2 })) {
            expect(bedFaults(spots, (id) => pieceOf(id, brimMm), BED)).toEqual([])
          }
        },
      ),
      { numRuns: 40 },
    )
  })

  test('two slabs side by side are told where their rectangles meet, by hand arithmetic', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -300, max: 300 }),
        fc.integer({ min: -200, max: 200 }),
        (dx, dy) => {
          const at = (x: number, y: number): Spot =>
            moveTo({ partId: 'slab', xMm: 0, yMm: 0, turnDeg: 0 }, outlines.slab, [x, y])
          const spots = [at(60, 50), at(60 + dx / 10, 50 + dy / 10)]
          const apart = Math.max(Math.abs(dx / 10) - 30, Math.abs(dy / 10) - 12)
          const told = bedFaults(spots, pieceOf, { ...BED, marginMm: 0 }).some(
            ({ why }) => why === 'overlap',
          )
          // Cells are half a millimetre.
          if (apart < -0.5) expect(told).toBe(true)
          if (apart > 0.5) expect(told).toBe(false)
        },
      ),
    )
  })

  test('a slab lies in the corner of an angle until their brims meet', () => {
    const angle: Spot = { partId: 'angle', xMm: 20, yMm: 20, turnDeg: 0 }
    const slab = (x: number, y: number) =>
      moveTo({ partId: 'slab', xMm: 0, yMm: 0, turnDeg: 0 }, outlines.slab, [x, y])
    const [left, low] = [20 + turnedBox(outlines.angle.hullMm, 0).minX, 20]
    const spots = [angle, slab(left + 8 + 1 + 15, low + 8 + 1 + 6)]
    expect(bedFaults(spots, pieceOf, BED)).toEqual([])
    expect(bedFaults(spots, (id) => pieceOf(id, 1), BED)).toEqual([
      { at: 0, why: 'overlap', with: 1 },
    ])
  })

  test('a turn leaves the middle where it is, and a piece goes where it is put', () => {
    fc.assert(
      fc.property(turns, turns, fc.boolean(), (from, to, mirror) => {
        const mirrored = mirror ? { mirrored: true as const } : {}
        const spot: Spot = { partId: 'angle', xMm: 33, yMm: 41, turnDeg: from, ...mirrored }
        const before = middleOf(spot, outlines.angle)
        const after = middleOf(turnTo(spot, outlines.angle, to), outlines.angle)
        for (const k of [0, 1] as const) expect(after[k] - before[k]).toBeLessThan(0.0011)
        const put = middleOf(moveTo(spot, outlines.angle, [50, 20]), outlines.angle)
        expect(Math.hypot(put[0] - 50, put[1] - 20)).toBeLessThan(0.001)
      }),
    )
  })

  test('what somebody placed is not laid again, mirrored copies apart', () => {
    const spot = (partId: string, mirrored?: true): Spot => ({
      partId,
      xMm: 0,
      yMm: 0,
      turnDeg: 0,
      ...(mirrored ? { mirrored } : {}),
    })
    const byHand = [[spot('a'), spot('a', true)], [spot('gone')]]
    const parts = [
      { id: 'a', count: 5, mirrored: 2 },
      { id: 'b', count: 1, mirrored: 0 },
    ]
    expect(restOf(parts, byHand)).toEqual([
      { id: 'a', count: 3, mirrored: 1 },
      { id: 'b', count: 1, mirrored: 0 },
    ])
    const known = [{ id: 'a', material: { id: 'pla' }, layerMm: 0.2 }]
    const run = { materialId: 'pla', layerMm: 0.2 }
    const own = { ...run, printerId: PRINTER_DEFAULT.id }
    const printers = { printer: PRINTER_DEFAULT, printers: PRINTERS.slice(1) }
    expect(handRuns(byHand, known, printers)).toEqual([{ ...own, spots: byHand[0] }])
    const other = PRINTERS[2]!.id
    const there = [{ ...spot('a'), printerId: other }]
    expect(handRuns([there], known, printers)).toEqual([{ ...run, printerId: other, spots: there }])
    // Its printer is gone: the frame's own prints it.
    expect(handRuns([there], known, { printer: PRINTER_DEFAULT })).toEqual([
      { ...own, spots: there },
    ])
  })
})
