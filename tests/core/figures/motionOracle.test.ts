import { beforeAll, describe, expect, it } from 'vitest'
import type { ManifoldToplevel } from 'manifold-3d'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import { printTime } from '../../../src/core/figures/hours.ts'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import type { Census } from '../../../src/core/model/census.ts'
import type { Printer } from '../../../src/core/model/figures.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Pattern, Recipe } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import {
  askewBar,
  damperCup,
  fin,
  islands,
  motionParts,
  narrowArm,
  narrowRooms,
  pivotCollar,
  thinFrame,
} from '../../support/motionParts.ts'
import { driveLines } from '../../support/driveLines.ts'
import { cutLayers, layLines, type CutLayers } from '../../support/simulate.ts'
import { box } from '../../support/meshes.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'
import { loadManifold } from '../../support/solidCensus.ts'

/*
 * The oracle is our own, as slow and plain as can be: exact polygons (manifold-3d), every line
 * laid, every move driven with full look-ahead; none of it shares code with the hours but the
 * heights of the layers.
 *
 * At one infill share the lines of a small part may happen to pair up or not, which histograms of
 * all spacings cannot know. So each part is printed at three shares: their hours together agree
 * within 2 %, each by itself within 4 %. Lines that wind lie wider apart, and fewer of them pair up
 * worse: 6.5 % by itself.
 */
interface Kind {
  readonly patterns: readonly Pattern[]
  readonly shares: readonly number[]
  readonly together: number
  readonly alone: number
}
const STRAIGHT: Kind = {
  patterns: ['lines', 'grid'],
  shares: [20, 30, 45],
  together: 0.02,
  alone: 0.04,
}
/** Denser waves take longer than solid lines do, which our hours never say; see below. */
const WINDING: Kind = {
  patterns: ['gyroid', 'honeycomb'],
  shares: [10, 20, 30],
  together: 0.02,
  alone: 0.065,
}
const CLASSES = ['mid-2010s', 'ordinary', 'fast-enclosed'].map((id) =>
  PRINTERS.find((printer) => printer.id === id)!,
)
/** Every kind of line at a speed that none of the others is near. */
const MOTLEY: Printer = {
  ...PRINTER_DEFAULT,
  wallMmS: 40,
  outerWallMmS: 20,
  smallLoopMmS: 12,
  topSkinMmS: 30,
  strandMmS: 15,
  floorMmS: 25,
}
const ALL = [...CLASSES, MOTLEY]
const PLA = MATERIALS.find(({ id }) => id === 'pla')!
const RECIPE: Recipe = { ...RECIPE_DEFAULTS, habits: PLAIN_HABITS }
const LEAST_ROOM_MM2 = PLAIN_HABITS.smallRoomMm2

/** Printers without what they take before the first layer. */
const running = new Map<Printer, Printer>()
function runningOf(printer: Printer): Printer {
  const known = running.get(printer) ?? { ...printer, startS: 0 }
  running.set(printer, known)
  return known
}

/** Held to a bound of its own, below. */
const NEEDLE = 'a needle'

let wasm: ManifoldToplevel
beforeAll(async () => {
  wasm = await loadManifold()
})

/**
 * Hours from histograms ÷ hours of the oracle, less one: at each share for each printer, and for
 * each printer together.
 */
interface Differences {
  readonly alone: readonly number[]
  readonly together: readonly number[]
}

/** Counted and cut once for all that is laid in it; of the part looked at last. */
let last: { readonly of: () => Mesh; readonly census: Census; readonly cut: CutLayers } | null =
  null
function counted(of: () => Mesh) {
  if (last?.of === of) return last
  const mesh = of()
  const census = countAllLayers(mesh, RECIPE)
  last = { of, census, cut: cutLayers(wasm, mesh, RECIPE, LEAST_ROOM_MM2) }
  return last
}

/** For each pattern. */
function differences(
  mesh: () => Mesh,
  { patterns, shares }: Pick<Kind, 'patterns' | 'shares'> = STRAIGHT,
  printers: readonly Printer[] = ALL,
): readonly Differences[] {
  const { census, cut } = counted(mesh)
  return patterns.map((pattern) => {
    const ours = printers.map(() => 0)
    const oracle = printers.map(() => 0)
    const alone: number[] = []
    for (const infillPct of shares) {
      const recipe = { ...RECIPE, pattern, infillPct }
      const laid = layLines(cut, recipe)
      printers.forEach((printer, k) => {
        const without = runningOf(printer)
        const a = printTime(census, recipe, PLA, without).mid
        const b = driveLines(laid, without).timeS
        ours[k]! += a
        oracle[k]! += b
        alone.push(a / b - 1)
      })
    }
    return { alone, together: ours.map((s, k) => s / oracle[k]! - 1) }
  })
}

const worst = (values: readonly number[]): number => Math.max(...values.map(Math.abs))

describe('hours from move histograms against every move driven by itself, four printers', () => {
  interface MotionPart {
    readonly name: string
    readonly mesh: () => Mesh
    readonly printers?: readonly Printer[]
  }
  const parts: readonly MotionPart[] = [
    ...motionParts(process.env['PREWEIGH_LONG'] !== undefined).filter(
      ({ name }) => name !== NEEDLE,
    ),
    { name: 'a damper cup', mesh: damperCup, printers: CLASSES },
    { name: 'a fin', mesh: fin },
  ]

  it('are tried on at least 20 parts', () => {
    expect(parts.length).toBeGreaterThanOrEqual(20)
  })

  // In the yoke webs are a few cells wide: rows of cells fit whole or not at all, and at 10 % fewer
  // do than their share of the room: 41 s for our 60 on honeycomb. Such ends lie close together and
  // are joined sooner. Round the ball and in the gallows a gyroid runs one way for many layers on end, so that each
  // begins near where the last one ended; ours turns from layer to layer as lines do. Measured
  // +2.1 % for each.
  const WIDER: Readonly<Record<string, number>> = {
    'a ball': 0.022,
    'a gallows': 0.022,
    'a tail yoke': 0.022,
  }
  describe.each(parts)('agree on $name', ({ name, mesh, printers }) => {
    it('in straight lines', () => {
      for (const { alone, together } of differences(mesh, STRAIGHT, printers)) {
        expect(worst(together)).toBeLessThan(STRAIGHT.together)
        expect(worst(alone)).toBeLessThan(STRAIGHT.alone)
      }
    }, 180_000)

    it('where lines wind', () => {
      for (const { alone, together } of differences(mesh, WINDING, printers)) {
        expect(worst(together)).toBeLessThan(WIDER[name] ?? WINDING.together)
        expect(worst(alone)).toBeLessThan(WINDING.alone)
      }
    }, 180_000)
  })
})

describe('a part of sixty islands', () => {
  // The oracle looks for the nearest next line after each one; ours goes over a layer once and over
  // layers like it by its histogram. A third are rings with rooms of 1.2 mm, as narrow as those
  // below. Measured over three shares: hours +0.7 to +1.1 % on lines and −0.6 to −1.4 % on grid,
  // way +2.0 % and +0.2 %, retracts +3.8 % and −0.1 %; those of walls are the same to the last one.
  it('takes the hours, the way and the retracts of every move', () => {
    const mesh = islands(60)
    const census = countAllLayers(mesh, RECIPE)
    const cut = cutLayers(wasm, mesh, RECIPE, LEAST_ROOM_MM2)
    for (const pattern of STRAIGHT.patterns) {
      const ours = { timeS: CLASSES.map(() => 0), wayM: 0, retracts: 0 }
      const oracle = { timeS: CLASSES.map(() => 0), wayM: 0, retracts: 0 }
      for (const infillPct of STRAIGHT.shares) {
        const recipe = { ...RECIPE, pattern, infillPct }
        const laid = layLines(cut, recipe)
        const hopsMm = laid.layers.flatMap(({ lines }) => lines.map(({ hopMm }) => hopMm))
        oracle.wayM += hopsMm.reduce((sum, mm) => sum + mm, 0) / 1000
        CLASSES.forEach((printer, k) => {
          const without = runningOf(printer)
          const { mid, travel } = printTime(census, recipe, PLA, without)
          const { timeS, retracts } = driveLines(laid, without)
          ours.timeS[k]! += mid
          oracle.timeS[k]! += timeS
          if (k > 0) return
          ours.wayM += travel!.travelM
          ours.retracts += travel!.retracts
          oracle.retracts += retracts.wall + retracts.skin + retracts.infill
        })
      }
      const apart = ours.timeS.map((timeS, k) => timeS / oracle.timeS[k]! - 1)
      expect(worst(apart), pattern).toBeLessThan(0.02)
      expect(Math.abs(ours.wayM / oracle.wayM - 1), pattern).toBeLessThan(0.03)
      expect(Math.abs(ours.retracts / oracle.retracts - 1), pattern).toBeLessThan(0.05)
    }
  }, 180_000)
})

describe('a pivot collar, whose rooms are smaller than a cell', () => {
  // It shaped nothing. Measured −0.2 % and +1.2 %; +3.8 and +5.1 % while every hole cut its lines
  // into zigzags of their own.
  it('agrees where lines wind', () => {
    for (const { together } of differences(pivotCollar, WINDING)) {
      expect(worst(together)).toBeLessThan(WINDING.together)
    }
  }, 180_000)
})

describe('where 2 % is out of reach', () => {
  // Rooms hardly wider than the lines are apart: where the few lines fall decides. Measured on grid
  // +2.1 % for the collar and +2.6 % for the arm (at one share alone up to −12.5 % and +5.4 %). Two
  // lines fill the rooms of the rings, and the oracle's hops from ring to ring make grid of 30 and
  // 45 % take longer than solid lines, which ours never does: −21 %; on lines +1.7 %. Without that
  // rule grid came to −4 and −5 % on two printers, and hours fell from 45 % to solid by a quarter,
  // as the oracle's do; at 20, 30 and 45 % −3, −8 and −2 % instead of −4, −18 and −24 %. A needle
  // takes as long as its path at the slowest speed, and its rooms hold one to four lines: +4.6 % on
  // lines. So does the damper cup where every kind of line is slow: +2.7 % on grid.
  it.each([
    { name: 'rings', mesh: narrowRooms, bound: 0.23 },
    {
      name: NEEDLE,
      mesh: motionParts(false).find(({ name }) => name === NEEDLE)!.mesh,
      bound: 0.05,
    },
    { name: 'a damper cup', mesh: damperCup, bound: 0.03 },
    { name: 'a pivot collar', mesh: pivotCollar, bound: 0.025 },
    { name: 'a narrow arm', mesh: narrowArm, bound: 0.03 },
  ])(
    'rooms narrow for their infill agree within $bound: $name',
    ({ mesh, bound }) => {
      for (const { together } of differences(mesh)) expect(worst(together)).toBeLessThan(bound)
    },
    180_000,
  )

  // A gyroid of 45 % takes a fast printer longer than solid lines would, and ours is never longer
  // than they: hours must not fall when infill is added, and at 100 % it is solid lines.
  it('dense waves take no longer than solid lines', () => {
    const fast = CLASSES.filter(({ id }) => id === 'fast-enclosed')
    const dense = { patterns: ['gyroid'], shares: [45] } as const
    const [{ alone }] = differences(() => box(20, 20, 4), dense, fast) as [Differences]
    expect(alone[0]).toBeLessThan(0)
    expect(worst(alone)).toBeLessThan(0.06)
  }, 180_000)

  // The way from infill back to the walls is 1.4–1.6 mm here, and beyond 1.5 mm filament is drawn
  // back; between the spacings that are followed nobody can tell. Measured −2.6 % on grid, −0.5 %
  // on lines.
  it('a bar askew to the lines agrees within 3 %', () => {
    for (const { together } of differences(askewBar)) expect(worst(together)).toBeLessThan(0.03)
  }, 180_000)

  // The oracle lays whole lines only and leaves the rest empty, or lays the last line twice; the
  // census counts the wall as full. Measured −15 % to +27 %: up to one line more or less.
  it.each([[1], [1.2], [1.4]])('a wall of %s mm agrees within one line', (wallMm) => {
    const mesh = thinFrame(wallMm)
    const recipe = { ...RECIPE, infillPct: 0 }
    const laid = layLines(cutLayers(wasm, mesh, recipe, LEAST_ROOM_MM2), recipe)
    const { wallMm3, layers } = countAllLayers(mesh, recipe)
    const oneLineMm = (2 * (60 + 40) - 4 * wallMm) * layers.count
    const lengthMm = wallMm3 / (recipe.lineMm * recipe.layerMm)
    expect(Math.abs(lengthMm - laid.lengthMm.wall)).toBeLessThan(oneLineMm)
  })
})
