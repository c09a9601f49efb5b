import { recipe } from './aircraft.ts'
import type { Aircraft, DrawnPart } from './aircraft.ts'
import { podBay, podNose, podTail } from './pod.ts'
import { TERN_AIRCRAFT } from './ternAircraft.ts'
import { fin, tailPlaneHalf, wingPanel } from './wing.ts'
import type { Workshop } from './workshop.ts'
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
    file: 'pod.3mf',
    name: 'Pod, three pieces',
    quantity: 1,
    spares: 0,
    mirrored: 0,
    // The file says so itself.
    unit: 'centimetre',
    material: 'pla',
    role: 'mount',
    recipe: recipe({ walls: 3, infillPct: 20 }),
    draw: pod,
  },
]

function pod(shop: Workshop): Uint8Array {
  const pieces = [
    { name: 'Nose', solid: podNose(shop), x: 4 },
    { name: 'Battery bay', solid: podBay(shop), x: 10 },
    { name: 'Tail cone', solid: podTail(shop), x: 16 },
  ]
  return write3mf(
    pieces.map(({ name, solid, x }) => ({
      name,
      mesh: rescale(shop.mesh(solid), 1 / MM_PER_CM),
      at: [x, 10, 0],
    })),
    'centimetre',
  )
}

/** A hand-launched glider with a motor. */
export const TERN: Aircraft = {
  id: 'tern',
  about: {
    name: 'Tern',
    story:
      'An invented sample. Tern is a hand-launched glider of 1.1 m span with a small motor in its nose: 15.4 dm² of wing, ' +
      '520 g all up, balance wanted 62 mm behind the leading edge at the root, with 40 mm of travel for the battery tray to get ' +
      'there. The wing is six panels of 183 mm, three files with a mirrored copy each, printed standing as a single wall of ' +
      '0.45 mm in foaming PLA on an 8 mm carbon spar. Look at what foaming does: change the panels to plain PLA and the wing ' +
      'weighs more than twice as much. The pod is one file with three pieces in it, drawn in centimetres, and says so. Always ' +
      'check the balance point of a real aircraft and follow your local rules before it flies.',
    carbon: null,
    materials: [],
    printer: 'ordinary',
    aircraft: TERN_AIRCRAFT,
  },
  parts: PARTS,
}
