import { beforeAll, expect, it } from 'vitest'
import type { ManifoldToplevel } from 'manifold-3d'
import { countAllLayers } from '../../../src/core/census/countAllLayers.ts'
import { infillLaid } from '../../../src/core/figures/infill.ts'
import { HABIT_DEFAULTS } from '../../../src/core/model/habits.ts'
import { RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import { windings } from '../../support/layCurves.ts'
import type { Path, Rings } from '../../support/layTool.ts'
import { pathLength } from '../../support/layTool.ts'
import { box } from '../../support/meshes.ts'
import { askewBar, damperCup, fin, pivotCollar, thinFrame } from '../../support/motionParts.ts'
import { PLAIN_HABITS } from '../../support/plainHabits.ts'
import { cutLayers } from '../../support/simulate.ts'
import { loadManifold } from '../../support/solidCensus.ts'

/*
 * Lines in three directions, laid one by one in the rooms of every layer (exact polygons,
 * manifold-3d), moving on from layer to layer so that no place is favoured. Joined to the free end
 * that is nearest along the wall they follow the shorter gaps, 0.18 to 0.37 of the edge here; where
 * every second gap is followed it is half of it. Real paths lie between (0.31 to 0.51, see
 * figures/infill.ts), and so must ours.
 */
const { joinedShare } = HABIT_DEFAULTS
const RECIPE = {
  ...RECIPE_DEFAULTS,
  pattern: 'triangles',
  habits: { ...PLAIN_HABITS, joinedShare },
} as const

let wasm: ManifoldToplevel
beforeAll(async () => {
  wasm = await loadManifold()
})

/** Three directions over a room, the lines of each so far apart; none along x or y. */
function rowsOver(rings: Rings, spacingMm: number, shift: number): Path[] {
  const [x, y] = rings[0]![0]!
  const reachMm = spacingMm + Math.max(...rings.flat().map(([u, v]) => Math.hypot(u - x, v - y)))
  const count = Math.ceil(reachMm / spacingMm)
  return [0, 1, 2].flatMap((k) => {
    const turn = 0.1 + (k * Math.PI) / 3
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    return Array.from({ length: 2 * count + 1 }, (_, i): Path => {
      const across = (i - count + ((shift + k / 3) % 1)) * spacingMm
      const [u, v] = [x - s * across, y + c * across]
      return [
        [u - c * reachMm, v - s * reachMm],
        [u + c * reachMm, v + s * reachMm],
      ]
    })
  })
}

const GOLDEN = 0.618_033_988_75

it.each([
  ['a block', () => box(40, 30, 10)],
  ['a bar askew', askewBar],
  ['a damper cup', damperCup],
  ['a pivot collar', pivotCollar],
  ['a fin', fin],
  ['a frame', () => thinFrame(6)],
])('three directions in %s lie between two ways of joining their ends', (_, of) => {
  const mesh = of()
  const census = countAllLayers(mesh, RECIPE)
  const { layers } = cutLayers(wasm, mesh, RECIPE, PLAIN_HABITS.smallRoomMm2)
  for (const infillPct of [10, 20, 30]) {
    const { lineMm } = RECIPE
    const spacingMm = (300 * lineMm) / infillPct
    const laid = { nearestMm: 0, linesMm: 0, edgeMm: 0 }
    layers.forEach(({ room }, i) => {
      if (room.length === 0) return
      const rows = rowsOver(room, spacingMm, i * GOLDEN)
      const [low, high] = windings(room, rows, 0, spacingMm / 2, lineMm)
      for (const path of i % 2 === 1 ? high : low) {
        laid.nearestMm += pathLength(path)
        // Every other move is a line.
        for (let k = 0; k + 1 < path.length; k += 2)
          laid.linesMm += pathLength(path.slice(k, k + 2))
      }
      for (const ring of room) laid.edgeMm += pathLength([...ring, ring[0]!])
    })
    const { pathMm } = infillLaid(census, { ...RECIPE, infillPct })
    expect(pathMm / laid.nearestMm).toBeGreaterThan(1)
    expect(pathMm / (laid.linesMm + laid.edgeMm / 2)).toBeLessThan(1)
  }
})
