import { recipe } from './aircraft.ts'
import type { Aircraft, DrawnPart } from './aircraft.ts'
import { podBay, podNose, podTail } from './pod.ts'
import { tailSeat } from './tailSeat.ts'
import { TERN_AIRCRAFT } from './ternAircraft.ts'
import { TERN_JOINTS } from './ternJoints.ts'
import { fin, tailPlaneHalf, wingPanel } from './wing.ts'
import type { Solid, Workshop } from './workshop.ts'
import { rescale, write3mf, writeStl } from './write.ts'

const HEADER = 'Invented sample part'
const MM_PER_CM = 10

const FOAM = {
  spares: 0,
  unit: 'millimetre',
  material: 'foaming-pla',
  role: 'wing-skin',
  recipe: recipe({
    lineMm: 0.45,
    walls: 1,
    topSkins: 0,
    bottomSkins: 0,
    infillPct: 0,
    pattern: 'lines',
  }),
} as const

const POD = { quantity: 1, spares: 0, mirrored: 0, material: 'pla', role: 'mount' } as const

const PANEL_NAMES = ['root', 'middle', 'tip'] as const

const PARTS: readonly DrawnPart[] = [
  ...PANEL_NAMES.map((where, i): DrawnPart => ({
    ...FOAM,
    file: `wing-${where}.stl`,
    name: `Wing panel, ${where}`,
    quantity: 2,
    mirrored: 1,
    draw: (shop) => writeStl(shop.mesh(wingPanel(shop, i as 0 | 1 | 2)), HEADER),
  })),
  {
    ...FOAM,
    file: 'tail-plane.stl',
    name: 'Tail plane half',
    quantity: 2,
    mirrored: 1,
    draw: (shop) => writeStl(shop.mesh(tailPlaneHalf(shop)), HEADER),
  },
  {
    ...FOAM,
    file: 'fin.stl',
    name: 'Fin',
    quantity: 1,
    mirrored: 0,
    draw: (shop) => writeStl(shop.mesh(fin(shop)), HEADER),
  },
  {
    ...POD,
    file: 'tail-seat.stl',
    name: 'Tail seat',
    unit: 'millimetre',
    recipe: recipe({ walls: 2, infillPct: 10 }),
    draw: (shop) => writeStl(shop.mesh(tailSeat(shop)), HEADER),
  },
  podPiece('pod-nose.3mf', 'Pod nose', podNose),
  podPiece('pod-bay.3mf', 'Pod bay', podBay),
  podPiece('pod-tail.3mf', 'Pod tail cone', podTail),
]

/** Its file says itself that it is drawn in centimetres. */
function podPiece(file: string, name: string, body: (shop: Workshop) => Solid): DrawnPart {
  return {
    ...POD,
    file,
    name,
    unit: 'centimetre',
    recipe: recipe({ walls: 3, infillPct: 20 }),
    draw: (shop) => {
      const mesh = rescale(shop.mesh(body(shop)), 1 / MM_PER_CM)
      return write3mf([{ name, mesh, at: [0, 0, 0] }], 'centimetre')
    },
  }
}

/** A hand-launched glider with a motor. */
export const TERN: Aircraft = {
  id: 'tern',
  about: {
    name: 'Tern',
    story:
      'An invented sample. Tern is a hand-launched glider of 1.1 m span with a small motor in its nose: ' +
      '15.4 dm² of wing, 520 g all up, balance wanted 62 mm behind the leading edge at the root, ' +
      'with 40 mm of travel for the battery tray to get there. The wing is six panels of 183 mm, three files with ' +
      'a mirrored copy each, printed standing as a single wall of 0.45 mm in foaming PLA on an 8 mm carbon ' +
      'spar. Look at what foaming does: change the panels to plain PLA and the wing weighs more than twice ' +
      'as much. The pod comes in three pieces whose files are drawn in centimetres, and say so. Always ' +
      'check the balance point of a real aircraft and follow your local rules before it flies.',
    carbon: null,
    materials: [],
    printer: 'ordinary',
    aircraft: TERN_AIRCRAFT,
  },
  parts: PARTS,
  joints: TERN_JOINTS,
  roots: ['Pod bay'],
  drawnIn: {},
}
