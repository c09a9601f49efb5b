import { SCREW_HOLES } from '../data/screwHoles.ts'
import type { BodyHoles, ItemBody } from '../model/aircraft.ts'
import type { Bounds, Mesh, Vec3 } from '../model/mesh.ts'
import {
  boredPrism,
  roundOf,
  ROUND_FACETS,
  type Flat,
  type PrismCell,
  type PrismFace,
  type PrismHole,
} from '../mesh/boredPrism.ts'

/** A motor's shaft stands out so many of its diameters (common practice, no source). */
const SHAFT_LONG = 2.4
/** Least that is left between a hole and the edge for it to be drawn. mm */
const EDGE_MM = 0.2

export function isRound({ kind }: Pick<ItemBody, 'kind'>): boolean {
  return kind === 'motor' || kind === 'prop'
}

/** Width of the holes: of a thread its tapping drill, right through ISO 273's fine clearance. mm */
export function bodyHoleMm({ thread, depthMm }: BodyHoles): number {
  const row = SCREW_HOLES.find(({ size }) => size === thread)!
  return depthMm === null ? row.clearanceMm.fine : row.tappingMm
}

/** Whether its holes lie inside it; else it is drawn without them. */
export function holesFitBody({ kind, sizeMm, holes }: ItemBody): boolean {
  if (holes === null) return true
  const reach = bodyHoleMm(holes) / 2 + EDGE_MM
  const [along, across, high] = sizeMm
  const { layout, aMm, bMm, depthMm } = holes
  const isDeepEnough = depthMm === null || depthMm < (layout === 'sides' ? across / 2 : high)
  if (layout === 'sides') return isDeepEnough && 2 * reach < Math.min(along, high)
  const isApart =
    layout === 'rectangle'
      ? Math.min(aMm, bMm) > 2 * reach
      : Math.min(aMm, bMm) / 2 > Math.SQRT2 * reach
  if (!isDeepEnough || !isApart) return false
  if (isRound({ kind })) {
    const out = layout === 'rectangle' ? Math.hypot(aMm, bMm) / 2 : Math.max(aMm, bMm) / 2
    return out + reach < (along / 2) * Math.cos(Math.PI / ROUND_FACETS)
  }
  return aMm / 2 + reach < along / 2 && bMm / 2 + reach < across / 2
}

/** The box of a body, its shaft left out. mm */
export function bodyBox({ sizeMm: [along, across, high] }: Pick<ItemBody, 'sizeMm'>): Bounds {
  return { min: [-along / 2, -across / 2, 0], max: [along / 2, across / 2, high] }
}

/** The middle of a body, where its mass is taken to be. mm */
export function bodyMiddle({ sizeMm }: Pick<ItemBody, 'sizeMm'>): Vec3 {
  return [0, 0, sizeMm[2] / 2]
}

/** A body as a closed mesh, in its own axes and mm, faced outwards. */
export function itemMesh(body: ItemBody): Mesh {
  const { sizeMm, shaftMm, kind } = body
  const [along, across, high] = sizeMm
  const holes = holesFitBody(body) ? body.holes : null
  if (holes?.layout === 'sides')
    return turnedUp(sidePrism(along, high, across, holes), across, high)
  const outline = isRound(body)
    ? roundOf({ at: [0, 0], radiusMm: along / 2 })
    : boxLoop(along, across)
  const plain: PrismFace = { cells: [{ corners: outline, hole: null }], depthMm: null }
  const middle: PrismHole = { at: [0, 0], radiusMm: shaftMm / 2 }
  const isBored = shaftMm > 0 && shaftMm < along - 2 * EDGE_MM
  const centred = (depthMm: number | null): PrismFace => ({
    cells: [{ corners: outline, hole: middle }],
    depthMm,
  })
  if (kind === 'prop' && isBored) return boredPrism(outline, high, centred(null), centred(null))
  const bottom = holes === null ? plain : bored(outline, holes)
  const top =
    kind === 'motor' && isBored
      ? centred(-SHAFT_LONG * shaftMm)
      : holes !== null && holes.depthMm === null
        ? bottom
        : plain
  // A shaft on top leaves no room for holes right through; they are of boards.
  const ends = kind === 'motor' && isBored && holes?.depthMm === null ? plain : bottom
  return boredPrism(outline, high, ends, top)
}

/** Middles of the sides and corners, counter-clockwise from the middle of the right one. */
function boxLoop(along: number, across: number): readonly Flat[] {
  const [x, y] = [along / 2, across / 2]
  return [
    [x, 0],
    [x, y],
    [0, y],
    [-x, y],
    [-x, 0],
    [-x, -y],
    [0, -y],
    [x, -y],
  ]
}

/** A face in four cells with a hole each. */
function bored(outline: readonly Flat[], holes: BodyHoles): PrismFace {
  const { layout, aMm, bMm, depthMm } = holes
  const [x, y] = [aMm / 2, bMm / 2]
  const quarter = outline.length / 4
  const isCross = layout === 'cross'
  const spots: readonly Flat[] = isCross
    ? [
        [0, y],
        [-x, 0],
        [0, -y],
        [x, 0],
      ]
    : [
        [x, y],
        [-x, y],
        [-x, -y],
        [x, -y],
      ]
  const first = isCross ? quarter / 2 : 0
  const cells = spots.map((at, k): PrismCell => {
    const corners: Flat[] = [[0, 0]]
    for (let i = 0; i <= quarter; i++) {
      corners.push(outline[(first + k * quarter + i) % outline.length]!)
    }
    return { corners, hole: { at, radiusMm: bodyHoleMm(holes) / 2 } }
  })
  return { cells, depthMm }
}

/** A hole in the middle of each side, as a prism that lies on one of them. */
function sidePrism(along: number, high: number, across: number, holes: BodyHoles): Mesh {
  const outline = boxLoop(along, high)
  const face: PrismFace = {
    cells: [{ corners: outline, hole: { at: [0, 0], radiusMm: bodyHoleMm(holes) / 2 } }],
    depthMm: holes.depthMm,
  }
  return boredPrism(outline, across, face, face)
}

/** From lying on its side, across it upwards, to standing. */
function turnedUp({ positions, indices }: Mesh, across: number, high: number): Mesh {
  const stood = positions.slice()
  for (let v = 0; v < positions.length; v += 3) {
    stood[v + 1] = across / 2 - positions[v + 2]!
    stood[v + 2] = positions[v + 1]! + high / 2
  }
  return { positions: stood, indices }
}
