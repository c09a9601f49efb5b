import { RUNS_DEFAULTS } from '../../src/core/data/runs.ts'
import { HABIT_DEFAULTS } from '../../src/core/model/habits.ts'
import { MATERIALS } from '../../src/core/data/materials.ts'
import { PRINTER_DEFAULT } from '../../src/core/data/printers.ts'
import type { JointEnd } from '../../src/core/model/joints.ts'
import type { Vec3 } from '../../src/core/model/mesh.ts'
import type { Frame } from '../../src/core/model/frame.ts'
import type { Session } from '../../src/state/actions/types.ts'
import { boxFile } from './session.ts'

/** An end with one hole of 3.4 mm through 4 mm, whose face is turned that way. */
export function jointEnd(partId: string, piece: number, normal: Vec3): JointEnd {
  const bore = { kind: 'bore', centreMm: [0, 0, 0], axis: [0, 0, 1] } as const
  return {
    partId,
    piece,
    bores: [{ ...bore, diameterMm: 3.4, depthMm: 4, openLow: true, openHigh: true }],
    face: { pointMm: [0, 0, 2 * normal[2]], normal },
  }
}

/**
 * Fills every place of the session's frame where a number can stand, through the page's own
 * actions.
 */
export async function fillFrame(actions: Session, state: () => { frame: Frame }): Promise<Frame> {
  await actions.addFiles([boxFile('bar.stl', 20, 8, 6), boxFile('rod.stl', 30, 4, 4)])
  await actions.settled()
  const [bar, rod] = state().frame.parts
  const [pla] = MATERIALS
  if (bar === undefined || rod === undefined || pla === undefined) throw new Error('no parts')
  await actions.addZones(bar.id, [boxFile('zone.stl', 5, 8, 6)])
  actions.updateParts([bar.id], { quantity: 4, spares: 1, mirrored: 0, note: 'of the first spool' })
  const hole = { centreMm: [5, 4, 3], diameterMm: 3.2 } as const
  actions.updateParts([bar.id], {
    holeUses: [
      { ...hole, use: { kind: 'damper', neckMm: 8, grooveMm: 2 } },
      { ...hole, use: { kind: 'shaft', shaftMm: 3 } },
    ],
  })
  actions.putMaterial({ ...pla, id: 'own', name: 'Own' })
  actions.putPrinter({ ...PRINTER_DEFAULT, id: 'own', clockFactor: 1, habits: HABIT_DEFAULTS })
  actions.putCarbon({ massG: 80, price: 40 })
  actions.keepRole(bar.id, 'Ours')
  actions.weighPart(rod.id, { scaleG: 3, pieces: 2, tareG: 1, stepG: 0.1, trusted: false })
  const date = '2027-01-02'
  const reading = { date, trusted: false }
  actions.putReadings(
    {
      wholes: [
        { id: 'w', of: 'printed', scaleG: 9, tareG: 0, stepG: 0.1, calculatedG: 8, ...reading },
      ],
      holeReadings: [
        {
          id: 'h',
          printerId: 'own',
          materialId: 'own',
          lies: 'upright',
          drawnMm: 3.2,
          measuredMm: 3,
          by: 'pin',
          date,
        },
      ],
      clocks: [
        {
          id: 'c',
          pieces: { [bar.id]: 2 },
          timeS: 3600,
          calculatedS: 3000,
          printerId: 'other',
          ...reading,
        },
      ],
    },
    'read',
  )
  const spot = { partId: bar.id, xMm: 50, yMm: 40, turnDeg: 15, printerId: 'other' }
  actions.putPrinters([{ ...PRINTER_DEFAULT, id: 'other', name: 'Other' }], 'print')
  actions.putRuns({ ...RUNS_DEFAULTS, byHand: [[spot]], coupons: [bar.id] }, 'print')
  const { recipe, materialId } = bar
  actions.putVariants(
    [{ id: 'v', name: 'Lighter', ways: { [bar.id]: { recipe, materialId } } }],
    'keep',
  )
  const flown = { minutes: 9, usedWh: 12, auwG: 500, motors: 4, propDiameterMm: 150 }
  const line = { id: 'l', name: 'Line', thresholdG: 250, meaning: 'Rules change', source: 'rules' }
  actions.putAircraft(
    {
      items: [
        {
          id: 'i',
          name: 'Camera',
          group: 'payload',
          quantity: 1,
          massG: 30,
          costEach: 20,
          status: 'estimated',
          basis: 'typed',
          positionMm: [10, 0, 5],
          boltPattern: '20 × 20',
          body: {
            kind: 'camera',
            sizeMm: [20, 19, 19],
            holes: { layout: 'sides', aMm: 20, bMm: 20, thread: 'M2', depthMm: 3 },
            shaftMm: 0,
          },
        },
      ],
      limitG: 600,
      printedLimitG: 145,
      massLines: [{ ...line, readOn: date }],
      places: [{ partId: bar.id, positionMm: [1, 2, 3], rotateDeg: [0, 0, 90], mirrored: false }],
      joints: [
        {
          id: 'j',
          a: jointEnd(bar.id, 0, [0, 0, 1]),
          b: jointEnd(rod.id, 0, [0, 0, -1]),
          kind: 'bores',
          mirrored: false,
          turnDeg: 45,
          slideMm: 0,
          gapMm: 0.5,
          fastener: { thread: 'M3', end: 'nut' },
        },
      ],
      flight: {
        motors: 4,
        motorThrustG: 620,
        propDiameterMm: 150,
        packCells: 3,
        packMah: 1500,
        voltsPerCell: 3.7,
        usableShare: 0.8,
        avionicsW: 10,
        motorRadiusMm: 120,
        flown,
      },
      wing: {
        areaDm2: 20,
        spanMm: 1200,
        cruiseMS: 14,
        dragCoefficient: 0.05,
        meanChordMm: 170,
        leadingEdgeMm: 0,
        balanceMm: [40, 55],
        noseMm: 180,
      },
      twin: {
        plate: 'carbon',
        thicknessMm: { [bar.id]: 3 },
        freeMm: { [bar.id]: 80 },
        platePricePerDm2: 6,
        cutPricePerM: 4,
        deliveryDays: 7,
      },
      season: {
        flights: 60,
        crashesPerFlight: 0.1,
        breakShare: { [bar.id]: 0.2 },
        carbonLeadDays: 7,
        carbonPartPrice: 10,
        carbonBreakFactor: 0.5,
      },
    },
    'fill the aircraft',
  )
  return state().frame
}
