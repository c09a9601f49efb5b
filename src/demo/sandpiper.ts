import type { Mesh } from '../core/model/mesh.ts'
import { recipe } from './aircraft.ts'
import type { Aircraft, DrawnPart } from './aircraft.ts'
import { frontArm, tailBoom } from './arms.ts'
import { cameraTray, damperCup, lensHood, trayBracket } from './camera.ts'
import { lowerDeck, upperDeck } from './decks.ts'
import { gpsMast } from './mast.ts'
import { SANDPIPER_AIRCRAFT } from './sandpiperAircraft.ts'
import { SANDPIPER_JOINTS } from './sandpiperJoints.ts'
import { batteryPad, threeFeet } from './soft.ts'
import { pivotCollar, tailYoke } from './tail.ts'
import { rescale, write3mf, writeObj, writeStl, writeTextStl } from './write.ts'

const HEADER = 'Invented sample part'
const MM_PER_INCH = 25.4

const ONE = { quantity: 1, spares: 0, mirrored: 0, unit: 'millimetre' } as const
const ARM = recipe({ walls: 4, infillPct: 20 })
const DECK = recipe({ walls: 3, infillPct: 30 })

const PARTS: readonly DrawnPart[] = [
  {
    ...ONE,
    file: 'front-arm.stl',
    name: 'Front arm',
    quantity: 2,
    mirrored: 1,
    material: 'petg',
    role: 'arm',
    recipe: ARM,
    draw: (shop) => writeStl(shop.mesh(frontArm(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'tail-boom.stl',
    name: 'Tail boom',
    spares: 1,
    material: 'petg',
    role: 'arm',
    recipe: ARM,
    draw: (shop) => writeStl(shop.mesh(tailBoom(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'lower-deck.stl',
    name: 'Lower deck',
    material: 'petg',
    role: 'plate',
    recipe: DECK,
    draw: (shop) => writeStl(shop.mesh(lowerDeck(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'upper-deck.3mf',
    name: 'Upper deck',
    material: 'petg',
    role: 'plate',
    recipe: DECK,
    draw: (shop) =>
      write3mf(
        [{ name: 'Upper deck', mesh: shop.mesh(upperDeck(shop)), at: [110, 110, 0] }],
        'millimetre',
      ),
  },
  {
    ...ONE,
    file: 'camera-tray.obj',
    name: 'Camera tray',
    material: 'petg',
    role: 'plate',
    recipe: DECK,
    draw: (shop) => writeObj(shop.mesh(cameraTray(shop)), 'camera-tray'),
  },
  {
    ...ONE,
    file: 'tray-bracket.stl',
    name: 'Tray bracket',
    quantity: 2,
    material: 'petg',
    role: 'mount',
    recipe: recipe({ walls: 3, infillPct: 20 }),
    draw: (shop) => writeStl(shop.mesh(trayBracket(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'tail-yoke.stl',
    name: 'Tail yoke',
    material: 'pa6-cf',
    role: 'mount',
    recipe: recipe({ walls: 4, infillPct: 40 }),
    draw: (shop) => writeStl(shop.mesh(tailYoke(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'pivot-collar.stl',
    name: 'Pivot collar',
    material: 'pa6-cf',
    role: 'mount',
    recipe: recipe({ walls: 4, infillPct: 40, layerMm: 0.16 }),
    draw: (shop) => writeStl(rescale(shop.mesh(pivotCollar(shop)), 1 / MM_PER_INCH), HEADER),
  },
  {
    ...ONE,
    file: 'lens-hood.stl',
    name: 'Lens hood',
    material: 'tpu-95a',
    role: 'soft',
    recipe: recipe({ walls: 2, infillPct: 0 }),
    draw: (shop) => writeStl(shop.mesh(lensHood(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'feet.stl',
    name: 'Feet (three)',
    material: 'tpu-95a',
    role: 'soft',
    recipe: recipe({ walls: 3, infillPct: 15 }),
    draw: (shop) => writeStl(withStrayTriangle(shop.mesh(threeFeet(shop))), HEADER),
  },
  {
    ...ONE,
    file: 'battery-pad.stl',
    name: 'Battery pad',
    material: 'tpu-95a',
    role: 'soft',
    recipe: recipe({ walls: 2, infillPct: 20 }),
    draw: (shop) => writeTextStl(shop.mesh(batteryPad(shop)), 'battery-pad'),
  },
  {
    ...ONE,
    file: 'gps-mast.stl',
    name: 'GPS mast',
    material: 'asa',
    role: 'mount',
    recipe: recipe({ walls: 3, infillPct: 20, brimMm: 4, supports: true }),
    draw: (shop) => writeStl(shop.mesh(gpsMast(shop)), HEADER),
  },
  {
    ...ONE,
    file: 'damper-cup.stl',
    name: 'Damper cup',
    quantity: 4,
    spares: 2,
    material: 'tpu-95a',
    role: 'soft',
    recipe: recipe({ walls: 4, infillPct: 100, layerMm: 0.16 }),
    draw: (shop) => writeStl(shop.mesh(damperCup(shop)), HEADER),
  },
]

/** A fixed-arm Y tricopter for photographs of a dune edge. */
export const SANDPIPER: Aircraft = {
  id: 'sandpiper',
  about: {
    name: 'Sandpiper',
    story:
      'An invented sample. Sandpiper is a fixed-arm Y tricopter that once a month carries a 62 g action ' +
      'camera along the same 900 m of dune edge, nose 35° down, to measure how much sand is lost; it stays ' +
      'up for about 11 minutes. Its builder allows 610 g all up and 145 g for everything printed, on a ' +
      '220 × 220 × 240 mm bed with a 0.4 mm nozzle. The frame is a few grams over, and finding them is the exercise: ' +
      'try a wall less on the tail boom, or ask what infill does in a 3 mm deck. Things to find on the ' +
      'way: the pivot collar was drawn in inches, so it looks 25 times too small, and the frame nearly 6 g ' +
      'lighter than it is, until its unit is changed; the right front arm is a mirrored copy of the left; ' +
      'the tail boom is longer than the bed and fits only on the diagonal; the three feet share one file ' +
      'with a stray triangle and lie in a row below the boom, until they are taken apart and bolted under ' +
      'the arms and the boom; the groove of a damper cup is half a millimetre narrower than the tray is ' +
      'thick; the lens hood weighs less than a kitchen scale can tell. Always check a real aircraft on a ' +
      'scale and follow your local rules before it flies.',
    carbon: { massG: 138, price: 34 },
    materials: [],
    printer: 'ordinary',
    aircraft: SANDPIPER_AIRCRAFT,
    scaleLog: [
      { part: 'Front arm', massG: 22.1, note: 'Left. Invented sample.' },
      { part: 'Front arm', massG: 22, note: 'Right. Invented sample.' },
      { part: 'Upper deck', massG: 15, note: 'Invented sample.' },
    ],
    crashLog: {
      flights: 60,
      broken: [
        { part: 'Tail boom', count: 3 },
        { part: 'Front arm', count: 1 },
        { part: 'Feet (three)', count: 2 },
      ],
    },
  },
  parts: PARTS,
  joints: SANDPIPER_JOINTS,
  roots: ['Lower deck', 'Feet (three)'],
  drawnIn: { 'Pivot collar': 'inch' },
}

/**
 * One triangle that belongs to nothing, as a careless export leaves behind: 1 mm, tilted, between
 * two feet.
 */
function withStrayTriangle(mesh: Mesh): Mesh {
  const next = mesh.positions.length / 3
  return {
    positions: Float32Array.of(...mesh.positions, 6, 11.6, 3, 7, 12.1, 3.4, 6.2, 12.4, 3.9),
    indices: Uint32Array.of(...mesh.indices, next, next + 1, next + 2),
  }
}
