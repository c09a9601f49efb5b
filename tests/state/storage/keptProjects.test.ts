import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { framePlaces } from '../../../src/core/joints/framePlaces.ts'
import { pieceKey } from '../../../src/core/joints/placePieces.ts'
import { withJointItems } from '../../../src/core/aircraft/hardware/jointItems.ts'
import { fileOf, startSession } from '../../support/session.ts'

async function openSample(version: number) {
  const bytes = readFileSync(`tests/samples/projects/v${version}.preweigh`)
  const session = await startSession()
  await session.actions.openProject(fileOf('mine.preweigh', bytes))
  await session.actions.settled()
  return session.state()
}

describe('kept project files of every version', () => {
  test.each([1, 2, 4, 5, 6, 7, 8])(
    'version %i opens with settings, meshes and figures',
    async (version) => {
      const state = await openSample(version)
      expect(state.failures).toEqual([])
      const kept = state.frame
      expect(kept).toMatchObject({
        version: 8,
        name: `Kept sample ${version}`,
        prices: { electricityPerKwh: 0.31 },
        carbon: { massG: 122, price: 30 },
        materials: [{ id: 'own-1', name: 'Shelf blend', flow: 1.03 }],
        parts: [
          {
            name: 'left arm',
            fileName: 'left_arm.stl',
            quantity: 4,
            spares: 1,
            mirrored: 2,
            materialId: 'own-1',
            note: 'tighten, then check\nsecond line',
            recipe: { infillPct: 35, walls: 4, pattern: 'gyroid' },
          },
          { name: 'Deck “low”', role: 'plate', pose: { rotateDeg: [0, 90, 0] } },
        ],
      })
      // The meshes are blocks, so their volumes are known: 12·10·4 and 30·20·2 mm³.
      const volumes = kept.parts.map(({ id }) => {
        const work = state.work[id]
        return work?.kind === 'done' ? work.read.measure.volumeMm3 : null
      })
      expect(volumes[0]).toBeCloseTo(480, 3)
      expect(volumes[1]).toBeCloseTo(1200, 3)
    },
  )

  test('version 2 opens with the aircraft beyond its printed parts', async () => {
    const { frame: kept } = await openSample(2)
    const [arm] = kept.parts
    expect(arm?.weighIn).toMatchObject({ massG: 1.9, calculatedG: null })
    expect(kept.aircraft).toMatchObject({
      items: [{ name: 'Screw M3 × 8', quantity: 12, massG: 0.9, positionMm: [1, -2, 3.5] }],
      limitG: 250,
      places: [{ partId: arm?.id, positionMm: [10, 0, 0], rotateDeg: [0, 0, 45], mirrored: true }],
      flight: { motors: 4, motorThrustG: 310, packMah: 850, usableShare: 0.8 },
    })
  })

  test('version 5 opens with its places and without joints', async () => {
    const { frame: kept } = await openSample(5)
    expect(kept.version).toBe(8)
    expect(kept.aircraft).toMatchObject({ joints: [] })
  })

  test('version 6 opens with its joints, whose screws are counted', async () => {
    const { frame: kept } = await openSample(6)
    expect(kept.aircraft.joints).toMatchObject([{ fastener: { thread: 'M3', end: 'nut' } }])
    // 4 + 4 mm, a locknut of 4.0 (DIN 985) and two threads of 0.5: 13 mm, stocked M3 × 16.
    expect(withJointItems(kept).items).toMatchObject([
      ...kept.aircraft.items,
      { name: 'Screw M3 × 16, socket head, steel (ISO 4762)', quantity: 2, status: 'calculated' },
      { name: 'Locknut M3, steel (ISO 7040)', quantity: 2 },
    ])
  })

  test('version 7 opens with what holes are for, how they came out and what bolts where', async () => {
    const { frame: kept } = await openSample(7)
    expect(kept.parts[0]?.holeUses).toMatchObject([
      { diameterMm: 3.2, use: { kind: 'insert', thread: 'M3' } },
      { diameterMm: 8, use: { kind: 'damper', neckMm: 8.2, grooveMm: null } },
    ])
    expect(kept.holeReadings).toMatchObject([{ drawnMm: 3.2, measuredMm: 3.05, by: 'pin' }])
    expect(kept.aircraft.items).toMatchObject([{ boltPattern: '30.5 × 30.5' }])
  })

  test('version 8 opens with the body of what is bought, and it stands where its joint says', async () => {
    const { frame: kept } = await openSample(8)
    const [, board] = kept.aircraft.items
    expect(board).toMatchObject({
      body: { kind: 'board', holes: { aMm: 30.5, thread: 'M3', depthMm: null } },
    })
    const { motions } = framePlaces(kept.parts, kept.aircraft)
    expect(motions.has(pieceKey({ partId: board?.id ?? '', piece: 0 }))).toBe(true)
  })

  test('version 4 opens with what scale and clock said', async () => {
    const { frame: kept } = await openSample(4)
    const [arm] = kept.parts
    expect(arm?.weighIn).toMatchObject({ pieces: 4, tareG: 0.1, stepG: 0.1, trusted: false })
    expect(arm?.weighIn?.massG).toBeCloseTo(1.9, 9)
    expect(kept.wholes).toMatchObject([{ of: 'printed', scaleG: 12.4 }])
    expect(kept.clocks).toMatchObject([{ pieces: { [arm?.id ?? '']: 4 }, timeS: 5400 }])
  })
})
