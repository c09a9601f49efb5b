import type { Census } from '../../src/core/model/census.ts'
import { CORNER_LIMITS } from '../../src/core/model/moves.ts'
import type { CensusMoves, LineTable, RunTable, Travels } from '../../src/core/model/moves.ts'
import type { GeometrySettings } from '../../src/core/model/settings.ts'

/**
 * The census of a w × d × h block standing square to the axes, by hand arithmetic: nothing in it
 * comes from the code that counts layers. Nothing to travel to: one outline, one room. The height
 * must be a whole number of layers of one height.
 */
export function blockCensus(w: number, d: number, h: number, settings: GeometrySettings): Census {
  const { layerMm, walls, lineMm, topSkins, bottomSkins } = settings
  const count = Math.round(h / layerMm)
  const of = (value: (i: number) => number): Float64Array =>
    Float64Array.from({ length: count }, (_, i) => value(i))
  const wide = Math.max(0, w - 2 * walls * lineMm)
  const deep = Math.max(0, d - 2 * walls * lineMm)
  const inside = wide * deep
  const isSkin = (i: number): boolean => i < bottomSkins || i >= count - topSkins
  const room = of((i) => (isSkin(i) ? 0 : inside))
  const skin = of((i) => (isSkin(i) ? inside : 0))
  // Lines along x end on the two sides that run along y, and the other way round.
  const ends = of((i) => (isSkin(i) || inside === 0 ? 0 : 2 * (i % 2 === 0 ? deep : wide)))
  const sum = (values: Float64Array): number => values.reduce((a, b) => a + b, 0) * layerMm
  const wall = of(() => w * d - inside)
  const ones = Uint32Array.from({ length: count }, () => 1)
  return {
    layers: {
      count,
      heightMm: of(() => layerMm),
      areaMm2: of(() => w * d),
      wallMm2: wall,
      gapMm2: of(() => 0),
      skinMm2: skin,
      roomMm2: room,
      strandMm2: of(() => 0),
      supportMm2: of(() => 0),
      roomSeenMm: ends,
      roomWalkMm: ends,
      roomEdgeMm: of((i) => (room[i]! > 0 ? 2 * Math.sqrt(room[i]!) * 2 : 0)),
      rooms: Uint32Array.from(room, (area) => (area > 0 ? 1 : 0)),
      contours: ones,
      islands: ones,
    },
    modelMm3: w * d * count * layerMm,
    wallMm3: sum(wall),
    gapMm3: 0,
    skinMm3: sum(skin),
    roomMm3: sum(room),
    strandMm3: 0,
    supportMm3: 0,
    brimMm3: 0,
    heightMm: count * layerMm,
    doubtfulShare: 0,
    coarseMm3: 0,
    coarseSupportMm3: 0,
    byHabit: {
      heldMm3: 0,
      overlapMm3: 0,
      roomOverlapMm3: 0,
      smallSolidMm3: 0,
      smallSparseMm3: 0,
      thinMm3: 0,
      airMm3: 0,
      tie: false,
    },
    zones: [],
    moves: movesOf(w, d, wide, deep, count, walls, lineMm, isSkin),
  }
}

/**
 * Every lap has four runs between right angles; lines run along x on even layers, along y on odd
 * ones.
 */
function movesOf(
  w: number,
  d: number,
  wide: number,
  deep: number,
  count: number,
  walls: number,
  lineMm: number,
  isSkin: (i: number) => boolean,
): CensusMoves {
  const corner = Float32Array.of(Math.SQRT1_2, Math.SQRT1_2)
  const lap: RunTable = {
    lengthMm: Float32Array.of(w, d),
    gentle: corner,
    sharp: corner,
    count: Float32Array.of(2 * count * walls, 2 * count * walls),
  }
  const nothing = new Float32Array()
  const none: RunTable = { lengthMm: nothing, gentle: nothing, sharp: nothing, count: nothing }
  const linesOn = (wanted: (i: number) => boolean): LineTable => {
    const chosen = Array.from({ length: count }, (_, i) => i).filter(wanted)
    const even = chosen.filter((i) => i % 2 === 0).length
    const odd = chosen.length - even
    return {
      lengthMm: Float32Array.of(wide, deep),
      acrossMm: Float32Array.of(even * deep, odd * wide),
      slant: 1,
    }
  }
  const layersOf = (wanted: (i: number) => boolean): number =>
    Array.from({ length: count }, (_, i) => i).filter(wanted).length
  // One zigzag a layer, and no way to it.
  const hops = (some: number) => ({ lengthMm: Float32Array.of(0), count: Float32Array.of(some) })
  const travels = (directions: number): Travels => ({
    wall: hops(0),
    skin: hops(layersOf(isSkin)),
    back: hops(count),
    nearHops: Float32Array.from({ length: count }, () => 1),
    farHops: new Float32Array(count),
    infill: [
      {
        spacingMm: lineMm,
        hops: hops(directions * layersOf((i) => !isSkin(i))),
        back: hops(count),
      },
    ],
  })
  // All layers of a kind alike.
  const laid = (value: (i: number) => number): Float32Array =>
    Float32Array.from({ length: count }, (_, i) => value(i))
  return {
    wall: CORNER_LIMITS.map(() => lap),
    wallLapMm: 2 * (w + d) * count * walls,
    smallLoop: CORNER_LIMITS.map(() => none),
    smallLapMm: 0,
    skin: linesOn(isSkin),
    room: linesOn((i) => !isSkin(i)),
    oneWay: travels(1),
    crossed: travels(2),
    byLayer: {
      outerMm: laid(() => (walls > 0 ? 2 * (w + d) - 4 * lineMm : 0)),
      smallMm: laid(() => 0),
      smallLoops: laid(() => 0),
      skinMm: laid((i) => (isSkin(i) ? 1 : 0)),
      skinLines: laid((i) => (isSkin(i) ? 1 : 0)),
      roomMm: laid((i) => (isSkin(i) ? 0 : 1)),
      roomLines: laid((i) => (isSkin(i) ? 0 : 1)),
    },
  }
}
