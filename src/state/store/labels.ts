import type { Frame } from '../../core/model/frame.ts'
import type { Recipe } from '../../core/model/settings.ts'
import type { PartPatch } from '../actions/types.ts'

/** Words for the undo and redo buttons, behind “Undo:”. */

const RECIPE_WORDS: Readonly<Record<keyof Recipe, string>> = {
  layerMm: 'layer height',
  firstLayerMm: 'first layer',
  lineMm: 'line width',
  walls: 'walls',
  topSkins: 'top layers',
  bottomSkins: 'bottom layers',
  infillPct: 'infill',
  pattern: 'pattern',
  supports: 'supports',
  supportAngleDeg: 'overhang angle',
  brimMm: 'brim',
  habits: 'habits',
}

const FIELD_WORDS: Readonly<Record<keyof PartPatch, string>> = {
  name: 'name',
  unit: 'unit',
  keepsHairs: 'loose hairs',
  quantity: 'quantity',
  spares: 'spares',
  mirrored: 'mirrored copies',
  materialId: 'material',
  recipe: 'recipe',
  pose: 'how it lies',
  note: 'note',
  holeUses: 'what a hole is for',
}

export function patchLabel(frame: Frame, ids: readonly string[], patch: PartPatch): string {
  const recipeKeys = Object.keys(patch.recipe ?? {}) as (keyof Recipe)[]
  const fields = (Object.keys(patch) as (keyof PartPatch)[]).filter((key) => key !== 'recipe')
  const words = [
    ...fields.map((key) => FIELD_WORDS[key]),
    ...(recipeKeys.length > 3 ? ['recipe'] : recipeKeys.map((key) => RECIPE_WORDS[key])),
  ]
  return `change ${words.join(', ')} of ${partWords(frame, ids)}`
}

/** “Arm” or “3 parts”. */
export function partWords(frame: Frame, ids: readonly string[]): string {
  const chosen = new Set(ids)
  const names = frame.parts.filter((part) => chosen.has(part.id)).map((part) => part.name)
  const [first] = names
  return names.length === 1 && first !== undefined ? `“${first}”` : `${names.length} parts`
}
