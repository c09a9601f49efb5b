import { useMemo } from 'react'
import type { Recipe } from '../../core/model/settings.ts'

/**
 * A recipe but for its infill, of which it says 0: the same object while nothing else of it
 * changes, so that fields that show no infill are not drawn at each step of its slider.
 */
export function useLaid(recipe: Recipe): Recipe {
  const text = JSON.stringify({ ...recipe, infillPct: 0 })
  return useMemo(() => JSON.parse(text) as Recipe, [text])
}
