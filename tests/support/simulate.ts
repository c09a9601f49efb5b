import type { CrossSection, ManifoldToplevel } from 'manifold-3d'
import type { Printer } from '../../src/core/figures.ts'
import { planLayers } from '../../src/core/geometry/census/layerPlan.ts'
import type { Mesh } from '../../src/core/mesh.ts'
import type { Recipe } from '../../src/core/settings.ts'
import type { Path, Rings } from './layTool.ts'
import { halfTurnSine, loopFrom, pathLength, zigzags } from './layTool.ts'
import { toSolid } from './solidCensus.ts'

/** Seconds and millimetres of laying a part line by line, start-up left out. */
export interface Simulated {
  readonly timeS: number
  readonly wallMm: number
  readonly skinMm: number
  readonly infillMm: number
  readonly travelS: number
  readonly travels: number
  /** Walls, skin, infill; travel apart. */
  readonly byKindS: readonly number[]
}

interface Move {
  readonly path: Path
  readonly speed: number
  readonly accel: number
  /** A ring that may start anywhere; its path is not closed yet. */
  readonly loop: boolean
}

/**
 * The slow oracle for the hours: cuts the layers with manifold-3d, lays every wall line, skin line and infill line as a
 * path, visits the nearest next one, and drives each path with full look-ahead — forward and backward over every single
 * move, so that no corner is taken faster than its limit and no ramp is steeper than the acceleration.
 * Patterns: lines and grid. Small rooms are skin, by the same rule as ours.
 */
export function simulate(
  wasm: ManifoldToplevel,
  mesh: Mesh,
  recipe: Recipe,
  printer: Printer,
  leastRoomMm2: number,
): Simulated {
  const solid = toSolid(wasm, mesh)
  const plan = planLayers(solid.boundingBox().max[2], recipe.layerMm, recipe.firstLayerMm)
  const slices: CrossSection[] = []
  for (let i = 0; i < plan.count; i++) slices.push(solid.slice(plan.cutMm[i]!).simplify(0.002))
  const nothing = wasm.CrossSection.square(0)
  const total = {
    timeS: 0,
    wallMm: 0,
    skinMm: 0,
    infillMm: 0,
    travelS: 0,
    travels: 0,
    byKindS: [0, 0, 0],
  }
  let here: readonly [number, number] = [0, 0]
  slices.forEach((slice, i) => {
    const first = i === 0
    const melt = printer.flowMm3S / (recipe.lineMm * plan.heightMm[i]!)
    const speed = (wanted: number): number =>
      Math.min(first ? Math.min(wanted, printer.firstLayerMmS) : wanted, melt)
    const inset = slice.offset(-recipe.walls * recipe.lineMm, 'Round', 2, 64)
    let room = inset
    for (let j = i - recipe.bottomSkins; j <= i + recipe.topSkins; j++) {
      if (j !== i) room = room.intersect(slices[j] ?? nothing)
    }
    const rooms = room.decompose().filter((piece) => piece.area() >= leastRoomMm2)
    room = rooms.length > 0 ? wasm.CrossSection.union(rooms) : nothing
    const skin = inset.subtract(room)
    const along = (i % 2) as 0 | 1
    const walls: Path[] = []
    for (let k = 0; k < recipe.walls; k++) {
      const line = slice.offset(-(k + 0.5) * recipe.lineMm, 'Round', 2, 64).simplify(0.002)
      walls.push(...ringsOf(line))
    }
    const skins = zigzags(ringsOf(skin), along, recipe.lineMm, recipe.lineMm)
    const directions = recipe.pattern === 'grid' ? 2 : 1
    const spacing = (directions * recipe.lineMm * 100) / recipe.infillPct
    const infill =
      recipe.infillPct <= 0
        ? []
        : directions === 2
          ? [
              ...zigzags(ringsOf(room), 0, spacing, recipe.lineMm),
              ...zigzags(ringsOf(room), 1, spacing, recipe.lineMm),
            ]
          : zigzags(ringsOf(room), along, spacing, recipe.lineMm)
    total.wallMm += sum(walls.map((ring) => [...ring, ring[0]!]))
    total.skinMm += sum(skins)
    total.infillMm += sum(infill)
    const moves: Move[][] = [
      walls.map((path) => ({
        path,
        loop: true,
        speed: speed(printer.wallMmS),
        accel: printer.wallAccelMmS2,
      })),
      skins.map((path) => ({
        path,
        loop: false,
        speed: speed(printer.skinMmS),
        accel: printer.accelMmS2,
      })),
      infill.map((path) => ({
        path,
        loop: false,
        speed: speed(printer.infillMmS),
        accel: printer.accelMmS2,
      })),
    ]
    for (const kind of moves) {
      const left = [...kind]
      while (left.length > 0) {
        const ready = left.map((item) =>
          item.loop ? { ...item, path: loopFrom(item.path, here), loop: false } : item,
        )
        const next = nearest(ready, here)
        const move = ready[next]
        left.splice(next, 1)
        const gap = Math.hypot(move!.path[0]![0] - here[0], move!.path[0]![1] - here[1])
        const driving = driveSeconds(move!, printer)
        total.timeS += travelSeconds(gap, printer) + driving
        total.travelS += travelSeconds(gap, printer)
        total.travels++
        total.byKindS[moves.indexOf(kind)]! += driving
        here = move!.path.at(-1)!
      }
    }
    total.timeS += printer.layerChangeS
  })
  return total
}

const sum = (paths: readonly Path[]): number => paths.reduce((mm, path) => mm + pathLength(path), 0)

function ringsOf(section: CrossSection): Rings {
  return section.toPolygons().map((ring) => ring.map(([x, y]) => [x, y] as const))
}

function nearest(moves: readonly Move[], here: readonly [number, number]): number {
  let best = 0
  let bestMm = Infinity
  moves.forEach(({ path }, i) => {
    const mm = Math.hypot(path[0]![0] - here[0], path[0]![1] - here[1])
    if (mm < bestMm) {
      bestMm = mm
      best = i
    }
  })
  return best
}

function travelSeconds(mm: number, printer: Printer): number {
  const { travelMmS: v, travelAccelMmS2: a } = printer
  const moving = mm >= (v * v) / a ? mm / v + v / a : 2 * Math.sqrt(mm / a)
  return moving + (mm > 1.5 ? printer.retractS : 0)
}

/** Look-ahead over one path: entry speeds from the corner rule, then no ramp steeper than the acceleration, either way. */
function driveSeconds({ path, speed, accel: a }: Move, printer: Printer): number {
  const lengths = path.slice(1).map((q, i) => Math.hypot(q[0] - path[i]![0], q[1] - path[i]![1]))
  const at = path.map((q, i) => {
    if (i === 0 || i === path.length - 1) return 0
    const turn = halfTurnSine(path[i - 1]!, q, path[i + 1]!)
    return Math.min(speed, turn > 0 ? (printer.cornerMmS * Math.SQRT1_2) / turn : speed)
  })
  for (let i = 1; i < at.length; i++)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i - 1]! ** 2 + 2 * a * lengths[i - 1]!))
  for (let i = at.length - 2; i >= 0; i--)
    at[i] = Math.min(at[i]!, Math.sqrt(at[i + 1]! ** 2 + 2 * a * lengths[i]!))
  return lengths.reduce(
    (seconds, mm, i) => seconds + rampSeconds(mm, at[i]!, at[i + 1]!, speed, a),
    0,
  )
}

function rampSeconds(mm: number, from: number, to: number, speed: number, a: number): number {
  const peak = Math.min(speed, Math.sqrt((2 * a * mm + from * from + to * to) / 2))
  const ramps = (2 * peak * peak - from * from - to * to) / (2 * a)
  return (2 * peak - from - to) / a + Math.max(0, mm - ramps) / speed
}
