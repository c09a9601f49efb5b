import { resolve } from 'node:path'
import { PRICES_DEFAULTS } from '../core/data/prices.ts'
import type { Problem } from '../core/model/problem.ts'
import { PreweighError } from '../core/model/problem.ts'
import { POSE_AS_DRAWN, RECIPE_DEFAULTS } from '../core/model/settings.ts'
import type { ToolpathFigures } from '../core/model/toolpath.ts'
import { unitToMm } from '../core/model/units.ts'
import type { ByPlace } from '../core/toolpath/laidByPlace.ts'
import { laidByPlace } from '../core/toolpath/laidByPlace.ts'
import { matchPart } from '../core/toolpath/matchPart.ts'
import { toldRecipe } from '../core/toolpath/toldRecipe.ts'
import { priceMesh } from './priceMesh.ts'
import type { ToolpathOptions } from './toolpathOptions.ts'
import { readBytes } from './whyUnread.ts'

/** The mesh that a toolpath prints, and both their plastic. */
export interface MatchedMesh {
  readonly file: string
  readonly rotateDeg: readonly number[]
  /** How far height and plan are off at most. */
  readonly misfitMm: number
  /** Other meshes given that fit as well. */
  readonly alike: readonly string[]
  /** By the toolpath; gap lines and a skirt are walls here. */
  readonly laid: ByPlace
  /**
   * Counted from the mesh with the recipe and habits that the toolpath shows, the usual ones where
   * it does not.
   */
  readonly counted: ByPlace & { readonly depositMm3: number }
}

/** One of the meshes given that nothing can be made of. */
export interface RefusedMesh {
  readonly file: string
  readonly problem: Problem
}

/**
 * Which of the meshes the toolpath prints, null where none fits, and which cannot be used; the
 * others are looked at all the same.
 */
export function matchMeshes(
  figures: ToolpathFigures,
  { meshes, unit, material, printer }: ToolpathOptions,
  base: string,
): { readonly part: MatchedMesh | null; readonly refused: readonly RefusedMesh[] } {
  const recipe = { ...RECIPE_DEFAULTS, ...toldRecipe(figures) }
  const settings = {
    unitOf: () => unit,
    recipe,
    material,
    printer: { ...printer, habits: { ...printer.habits, ...figures.habits } },
    prices: PRICES_DEFAULTS,
    keepsHairs: false,
    zones: [],
  }
  const refused: RefusedMesh[] = []
  const priced = meshes.flatMap((file) => {
    try {
      const named = { name: file, bytes: readBytes(resolve(base, file), 'The file') }
      return { named, ...priceMesh(named, file, { ...settings, pose: POSE_AS_DRAWN }, () => {}) }
    } catch (error) {
      if (!(error instanceof PreweighError)) throw error
      refused.push({ file, problem: error.problem })
      return []
    }
  })
  const match = matchPart(
    figures,
    priced.map(({ weighed: { read, inspection } }) => ({
      mesh: read.mesh,
      scaleToMm: unitToMm(read.unit ?? unit),
      volumeMm3: inspection.measure.volumeMm3,
    })),
  )
  const found = match === null ? undefined : priced[match.part]
  if (match === null || found === undefined) return { part: null, refused }
  const { pose } = match
  const again = pose.rotateDeg.every((degrees) => degrees === 0)
    ? found
    : priceMesh(found.named, found.named.name, { ...settings, pose }, () => {})
  const { wallMm3, skinMm3, infillMm3, depositMm3 } = again.figures
  const part = {
    file: found.named.name,
    rotateDeg: pose.rotateDeg,
    misfitMm: match.misfitMm,
    alike: match.alike.flatMap((other) => priced[other]?.named.name ?? []),
    laid: laidByPlace(figures),
    counted: { wallMm3, skinMm3, infillMm3, depositMm3 },
  }
  return { part, refused }
}
