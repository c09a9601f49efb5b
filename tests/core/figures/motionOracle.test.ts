import { beforeAll, describe, expect, it } from 'vitest'
import type { ManifoldToplevel } from 'manifold-3d'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRINTER_DEFAULT, PRINTERS } from '../../../src/core/data/printers.ts'
import { printTime } from '../../../src/core/figures/hours.ts'
import { takeCensus } from '../../../src/core/census/takeCensus.ts'
import type { Printer } from '../../../src/core/model/figures.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Recipe } from '../../../src/core/model/settings.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import {
  askewBar,
  damperCup,
  fin,
  motionParts,
  narrowArm,
  narrowRooms,
  pivotCollar,
  thinFrame,
} from '../../support/motionParts.ts'
import { cutLayers, driveLines, layLines } from '../../support/simulate.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'
import { loadManifold } from '../../support/solidCensus.ts'

/*
 * The oracle is our own, as slow and plain as can be: exact polygons (manifold-3d), every line
 * laid, every move driven with full look-ahead; none of it shares code with the hours but the
 * heights of the layers.
 *
 * At one infill share the lines of a small part may happen to pair up or not, which histograms of
 * all spacings cannot know. So each part is printed at three shares: their hours together agree
 * within 2 %, each by itself within 4 %.
 */
const TOGETHER = 0.02
const ALONE = 0.04
const SHARES = [20, 30, 45]
const PATTERNS = ['lines', 'grid'] as const
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

/** For each pattern. */
function differences(mesh: Mesh, printers: readonly Printer[] = ALL): readonly Differences[] {
  const census = takeCensus(mesh, RECIPE)
  const cut = cutLayers(wasm, mesh, RECIPE, LEAST_ROOM_MM2)
  return PATTERNS.map((pattern) => {
    const ours = printers.map(() => 0)
    const oracle = printers.map(() => 0)
    const alone: number[] = []
    for (const infillPct of SHARES) {
      const recipe = { ...RECIPE, pattern, infillPct }
      const laid = layLines(cut, recipe)
      printers.forEach((printer, k) => {
        const without = { ...printer, startS: 0 }
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

  it.each(parts)(
    'agree on $name',
    ({ mesh, printers }) => {
      for (const { alone, together } of differences(mesh(), printers)) {
        expect(worst(together)).toBeLessThan(TOGETHER)
        expect(worst(alone)).toBeLessThan(ALONE)
      }
    },
    180_000,
  )
})

describe('where 2 % is out of reach', () => {
  // Rooms hardly wider than the lines are apart: where the few lines fall decides. Measured on grid
  // +2.1 % for the collar and +2.6 % for the arm (at one share alone up to −12.5 % and +5.4 %). Two
  // lines fill the rooms of the rings, and the oracle's hops from ring to ring make grid of 30 and
  // 45 % take longer than solid lines, which ours never does: −22.5 %; on lines −4 %. A needle takes
  // as long as its path at the slowest speed, and its rooms hold one to four lines: +4.6 % on lines.
  // So does the damper cup where every kind of line is slow: +2.7 % on grid.
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
      for (const { together } of differences(mesh())) expect(worst(together)).toBeLessThan(bound)
    },
    180_000,
  )

  // The way from infill back to the walls is 1.4–1.6 mm here, and beyond 1.5 mm the filament is drawn back; between the
  // spacings that are followed nobody can tell. Measured −2.6 % on grid, −0.5 % on lines.
  it('a bar askew to the lines agrees within 3 %', () => {
    for (const { together } of differences(askewBar())) expect(worst(together)).toBeLessThan(0.03)
  }, 180_000)

  // The oracle lays whole lines only and leaves the rest empty, or lays the last line twice; the
  // census counts the wall as full. Measured −15 % to +27 %: up to one line more or less.
  it.each([[1], [1.2], [1.4]])('a wall of %s mm agrees within one line', (wallMm) => {
    const mesh = thinFrame(wallMm)
    const recipe = { ...RECIPE, infillPct: 0 }
    const laid = layLines(cutLayers(wasm, mesh, recipe, LEAST_ROOM_MM2), recipe)
    const { wallMm3, layers } = takeCensus(mesh, recipe)
    const oneLineMm = (2 * (60 + 40) - 4 * wallMm) * layers.count
    const lengthMm = wallMm3 / (recipe.lineMm * recipe.layerMm)
    expect(Math.abs(lengthMm - laid.lengthMm.wall)).toBeLessThan(oneLineMm)
  })
})
