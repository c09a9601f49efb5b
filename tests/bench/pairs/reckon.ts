import { readFileSync } from 'node:fs'
import { countLayers } from '../../../src/core/census/countLayers.ts'
import { MATERIALS } from '../../../src/core/data/materials.ts'
import { PRICES_DEFAULTS } from '../../../src/core/data/prices.ts'
import { PRINTER_DEFAULT } from '../../../src/core/data/printers.ts'
import { infillOn } from '../../../src/core/figures/infill.ts'
import { partFigures } from '../../../src/core/figures/part.ts'
import { readMesh } from '../../../src/core/formats/read.ts'
import { orientMesh } from '../../../src/core/mesh/orient.ts'
import { FACE_POSES, placeMesh } from '../../../src/core/mesh/pose.ts'
import type { Census } from '../../../src/core/model/census.ts'
import type { FigureDoubt } from '../../../src/core/model/doubt.ts'
import type { KnownHabits } from '../../../src/core/model/habits.ts'
import type { Mesh } from '../../../src/core/model/mesh.ts'
import type { Pose, Recipe } from '../../../src/core/model/settings.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../../../src/core/model/settings.ts'
import type { Pair } from './readPairs.ts'

/** What is reckoned for a pair; mm³ and m. */
export interface Reckoned {
  /** Above the first layer, by kind. */
  readonly laterMm3: Readonly<Record<'walls' | 'solid' | 'sparse', number>>
  readonly firstMm3: number
  readonly depositMm3: number
  /**
   * Share of the deposit that the range reaches below and above: what is not known of the count,
   * not of the plastic.
   */
  readonly low: number
  readonly high: number
  /** Of the filament's length. */
  readonly doubt: FigureDoubt
  readonly pathM: number
  readonly layers: number
}

/** The recipe of a pair: what its maker set, with the measured mean bead as the line. */
function recipeOf(pair: Pair, habits: KnownHabits): Recipe {
  return {
    ...RECIPE_DEFAULTS,
    layerMm: pair.layerMm,
    firstLayerMm: pair.firstMm,
    lineMm: pair.seen.beadMm,
    walls: pair.walls,
    topSkins: pair.top,
    bottomSkins: pair.bottom,
    infillPct: pair.infillPct,
    pattern: pair.pattern,
    habits,
  }
}

export function meshOf(pair: Pair): Mesh {
  return orientMesh(readMesh(readFileSync(pair.meshFile), pair.name).mesh)
}

/** Drawn upright or not: the first of the six ways up that is as many layers tall as were seen. */
export function poseOf(pair: Pair, mesh: Mesh): Pose {
  const { layers } = pair.seen
  if (layers === null) return POSE_AS_DRAWN
  const poses = [POSE_AS_DRAWN, ...FACE_POSES.map(({ pose }) => pose)]
  return poses.find((pose) => Math.abs(layersOf(pair, mesh, pose) - layers) <= 2) ?? POSE_AS_DRAWN
}

function layersOf(pair: Pair, mesh: Mesh, pose: Pose): number {
  const { positions, indices } = placeMesh(mesh, 1, pose)
  let heightMm = 0
  for (const i of indices) heightMm = Math.max(heightMm, positions[3 * i + 2]!)
  return 1 + (heightMm - pair.firstMm) / pair.layerMm
}

export function reckon(pair: Pair, mesh: Mesh, pose: Pose, habits: KnownHabits): Reckoned {
  const recipe = recipeOf(pair, habits)
  const census = countLayers({ part: mesh, zones: [] }, 1, pose, recipe)
  const figures = partFigures(census, recipe, MATERIALS[0]!, PRINTER_DEFAULT, PRICES_DEFAULTS)
  const { filamentM, wallMm3, skinMm3, infillMm3 } = figures
  const depositMm3 = wallMm3 + skinMm3 + infillMm3
  const first = firstLayerMm3(census, recipe)
  return {
    laterMm3: {
      walls: wallMm3 - first.walls,
      solid: skinMm3 - first.solid,
      sparse: infillMm3 - first.sparse,
    },
    firstMm3: first.walls + first.solid + first.sparse,
    depositMm3,
    low: 1 - filamentM.low / filamentM.mid,
    high: filamentM.high / filamentM.mid - 1,
    doubt: figures.doubt.filament,
    pathM: depositMm3 / (recipe.lineMm * recipe.layerMm) / 1000,
    layers: census.layers.count,
  }
}

function firstLayerMm3(census: Census, recipe: Recipe): Reckoned['laterMm3'] {
  const { layers } = census
  const heightMm = layers.heightMm[0] ?? 0
  return {
    walls: (layers.wallMm2[0] ?? 0) * heightMm,
    solid: (layers.skinMm2[0] ?? 0) * heightMm,
    sparse: infillOn(census, recipe, 0, 1).pathMm * recipe.lineMm * heightMm,
  }
}
