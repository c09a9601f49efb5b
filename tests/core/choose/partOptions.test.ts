import { describe, expect, it } from 'vitest'
import { findFront } from '../../../src/core/choose/findFront.ts'
import { layerStiffness } from '../../../src/core/choose/layerStiffness.ts'
import { partOptions, type ChoiceSetup } from '../../../src/core/choose/partOptions.ts'
import { sumWith } from '../../../src/core/choose/sumWith.ts'
import type { Assignment } from '../../../src/core/choose/types.ts'
import { geometriesOf, usualVariety, type Setting } from '../../../src/core/choose/variety.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { pricesIn } from '../../../src/core/data/prices.ts'
import { laidRecipe } from '../../../src/core/figures/laidRecipe.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import type { FramePart } from '../../../src/core/frame/types.ts'
import { pieceOf } from '../../../src/core/frame/weighIn.ts'
import { weighFrame } from '../../../src/core/frame/weighFrame.ts'
import type { Part } from '../../../src/core/model/frame.ts'
import { blockCensus } from '../../support/blockCensus.ts'
import { bareFrame, materialOf, printedPart } from '../../support/ledgerParts.ts'

const ALL: ReadonlySet<Setting> = new Set(['walls', 'infill', 'skins', 'layer', 'material'])
const SETUP: ChoiceSetup = { printer: PRINTER_DEFAULT, prices: pricesIn('EUR'), materialOf }
/** A slab that bends along its 120 mm; 12 mm is a whole number of every layer tried. */
const SIZE = [120, 20, 12] as const
const OUTLINE = { areaMm2: 120 * 20, longDeg: 0 }

function counted(part: Part) {
  const census = blockCensus(...SIZE, part.recipe)
  const { materialId } = part
  const material = materialOf(materialId)
  const { printer, prices } = SETUP
  const figures = partFigures(census, laidRecipe(part, printer), material, printer, prices)
  return { census, row: { part, material, figures, failed: false } satisfies FramePart }
}

function optionsOf(part: Part, free = ALL, frame: readonly FramePart[] = [counted(part).row]) {
  const { census } = counted(part)
  const sum = weighFrame(frame, bareFrame())
  const row = sum.rows.find((each) => each.part.id === part.id)!
  const variety = usualVariety(part, free, ['petg'])
  const all = geometriesOf(part.recipe, variety).map((patch) => ({
    patch,
    census: blockCensus(...SIZE, { ...part.recipe, ...patch }),
  }))
  const { stiffnessOf } = layerStiffness(census, OUTLINE)
  return { sum, found: partOptions(row, all, variety, SETUP, stiffnessOf) }
}

const arm = printedPart('arm', 1, 4, { spares: 2 }).part

describe('partOptions', () => {
  const { sum, found } = optionsOf(arm)

  it('begins with the part as the frame has it, to the digit, spares paid for', () => {
    const [now] = found.options
    expect(now).toMatchObject({ way: { recipe: arm.recipe, materialId: 'pla' }, stiffness: 1 })
    expect(now!.massG).toBeCloseTo(sum.printed.massG.mid, 9)
    expect(now!.timeS).toBeCloseTo(sum.withSpares.timeS.mid, 6)
    expect(now!.cost).toBeCloseTo(sum.withSpares.cost.mid, 9)
  })

  it('has each setting with each, and none twice', () => {
    // Walls 1–4, skins 2–6, infills 15, layers 0.12–0.32 without those too high for 0.4 mm lines, 2
    // plastics.
    expect(found.options).toHaveLength(4 * 5 * 15 * 6 * 2)
    expect(new Set(found.options.map(({ way }) => JSON.stringify(way))).size).toBe(
      4 * 5 * 15 * 6 * 2,
    )
    expect(optionsOf(arm, new Set()).found.options).toHaveLength(1)
  })

  it('knows a hollow box: its bending stiffness is that of the box less the room', () => {
    // b h³ − b' h'³ (Gere and Timoshenko, Mechanics of Materials), skins and walls taken off; at 0
    // % infill.
    const bare = { ...arm, recipe: { ...arm.recipe, infillPct: 0 } }
    const { options } = optionsOf(bare, new Set(['walls', 'skins'] as const)).found
    const box = (walls: number, skins: number): number =>
      20 * 12 ** 3 * 120 - (20 - 0.8 * walls) * (120 - 0.8 * walls) * (12 - 0.4 * skins) ** 3
    for (const { way, stiffness } of options) {
      const { walls, topSkins } = way.recipe
      expect(stiffness).toBeCloseTo(box(walls, topSkins) / box(2, 4), 9)
    }
  })

  it('adds up as the frame does, once adopted', () => {
    const deck = { ...arm, id: 'deck', quantity: 1, spares: 0 }
    const frame = [counted(arm).row, counted(deck).row]
    const parts = [optionsOf(arm, ALL, frame).found, optionsOf(deck, ALL, frame).found]
    const front = run(findFront(parts))
    expect(front.length).toBeGreaterThan(20)
    for (const one of [front[0]!, front.at(-1)!, front[Math.floor(front.length / 2)]!]) {
      const then = sumWith(frame, bareFrame(), taken(parts, one), SETUP)
      expect(then.printed.massG.mid).toBeCloseTo(one.massG, 6)
      expect(then.withSpares.timeS.mid).toBeCloseTo(one.timeS, 4)
      expect(then.withSpares.cost.mid).toBeCloseTo(one.cost, 6)
    }
  })

  it('adds up within what the scale taught where a weighed part changes', () => {
    const scale = (part: Part, massG: number): Part => ({
      ...part,
      weighIn: {
        massG,
        stepG: 0.1,
        date: null,
        of: pieceOf(part, materialOf('pla'), PRINTER_DEFAULT),
        calculatedG: counted(part).row.figures.massG.mid,
      },
    })
    const plain = counted(arm).row.figures.massG.mid
    const weighed = scale(arm, 1.04 * plain)
    const deck = { ...arm, id: 'deck', quantity: 1, spares: 0 }
    const frame = [counted(weighed).row, counted(deck).row]
    const free: ReadonlySet<Setting> = new Set(['walls', 'infill', 'skins'])
    const parts = [optionsOf(weighed, free, frame).found, optionsOf(deck, free, frame).found]
    for (const one of run(findFront(parts))) {
      const then = sumWith(frame, bareFrame(), taken(parts, one), SETUP)
      expect(Math.abs(then.printed.massG.mid / one.massG - 1)).toBeLessThan(0.01)
    }
  })
})

describe('geometriesOf', () => {
  it('leaves out layers too high for the line and parts of nothing', () => {
    const thin = { ...arm.recipe, lineMm: 0.3, walls: 0, topSkins: 0, bottomSkins: 0 }
    const variety = {
      ...usualVariety({ recipe: thin, materialId: 'pla' }, ALL),
      walls: [0, 1],
      skins: [0, 1],
    }
    const patches = geometriesOf(thin, variety)
    // First the part itself, whatever it is.
    expect(patches[0]).toEqual({})
    for (const patch of patches.slice(1)) {
      const { walls, topSkins, bottomSkins, layerMm } = { ...thin, ...patch }
      expect(walls + topSkins + bottomSkins).toBeGreaterThan(0)
      expect(layerMm).toBeLessThanOrEqual(0.24)
    }
  })
})

function run<R>(steps: Generator<unknown, R, void>): R {
  for (;;) {
    const step = steps.next()
    if (step.done === true) return step.value
  }
}

function taken(parts: readonly { readonly partId: string }[], { options }: Assignment) {
  return new Map(parts.map(({ partId }, i) => [partId, options[i]!]))
}
