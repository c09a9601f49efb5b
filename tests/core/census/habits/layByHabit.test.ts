import { describe, expect, it } from 'vitest'
import { countAllLayers } from '../../../../src/core/census/countAllLayers.ts'
import { depositOf } from '../../../../src/core/figures/deposit.ts'
import type { KnownHabits } from '../../../../src/core/model/habits.ts'
import type { Mesh } from '../../../../src/core/model/mesh.ts'
import { RECIPE_DEFAULTS } from '../../../../src/core/model/settings.ts'
import { habitParts } from '../../../support/habitParts.ts'
import type { LaidByKind } from '../../../support/layByHabit.ts'
import { layByHabit } from '../../../support/layByHabit.ts'
import { loadManifold } from '../../../support/solidCensus.ts'

/*
 * The census against lines laid one by one from polygons (manifold-3d) with the same habits.
 * Nothing of ours is on the other side but the heights of the cuts. Every kind agrees within 1 % of
 * the part's plastic.
 */
const wasm = await loadManifold()
const parts = habitParts(wasm)
const WITHIN = 0.01
/**
 * Rooms hardly wider than infill lines are apart: where the few lines fall decides. Measured 1.1 %
 * of the part.
 */
const NARROW_ROOMS: Readonly<Record<string, number>> = { 'a hub with spokes': 0.012 }

/** The other ends of the habits' ranges, or near them. */
const OTHER: KnownHabits = {
  oneLineBelow: 1.4,
  overlapShare: 0.3,
  smallRoomMm2: 60,
  holdMm: 2,
  slopeBandMm: 1,
  strandShare: 1.4,
  joinedShare: 0.25,
}

/** Census less lines, as shares of all the lines' plastic. */
function differences(mesh: Mesh, habits: KnownHabits): Record<keyof LaidByKind | 'all', number> {
  const recipe = { ...RECIPE_DEFAULTS, pattern: 'lines', infillPct: 20, habits } as const
  const { wall, gap, skin, strand, infill } = layByHabit(wasm, mesh, recipe)
  const ours = depositOf(countAllLayers(mesh, recipe), recipe)
  const all = wall + gap + skin + strand + infill
  return {
    all: (ours.wallMm3 + ours.skinMm3 + ours.infillMm3) / all - 1,
    wall: (ours.wallMm3 - ours.gapMm3 - wall) / all,
    gap: (ours.gapMm3 - gap) / all,
    skin: (ours.skinMm3 - ours.strandMm3 - skin) / all,
    strand: (ours.strandMm3 - strand) / all,
    infill: (ours.infillMm3 - infill) / all,
  }
}

function expectAlike(name: string, mesh: Mesh, habits: KnownHabits): void {
  for (const [kind, share] of Object.entries(differences(mesh, habits))) {
    expect(Math.abs(share), `${name}: ${kind}`).toBeLessThan(NARROW_ROOMS[name] ?? WITHIN)
  }
}

describe('a count by regions and lines laid one by one, by kind', () => {
  it('are held against each other on at least 20 parts', () => {
    expect(parts.length).toBeGreaterThanOrEqual(20)
  })

  it.each(parts)(
    'agree on $name',
    ({ name, mesh }) => {
      expectAlike(name, mesh, {})
    },
    300_000,
  )
})

describe('with other habits', () => {
  const some = new Set([
    'a plate of thin ribs',
    'a chamfered arm',
    'a cone',
    'a stepped tower',
    'a thin pod',
  ])
  it.each(parts.filter(({ name }) => some.has(name)))(
    'agree on $name',
    ({ name, mesh }) => {
      expectAlike(name, mesh, OTHER)
    },
    300_000,
  )

  it('leaves gaps open where no gap lines are laid', () => {
    const { mesh } = parts.find(({ name }) => name === 'a frame of walls three lines thick')!
    expectAlike('', mesh, { gapLines: false })
    const recipe = { ...RECIPE_DEFAULTS, habits: { gapLines: false } }
    const census = countAllLayers(mesh, recipe)
    expect(census.gapMm3).toBe(0)
    // Two of three lines.
    expect(census.wallMm3 / census.modelMm3).toBeGreaterThan(0.65)
    expect(census.wallMm3 / census.modelMm3).toBeLessThan(0.68)
  })
})
