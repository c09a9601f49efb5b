import type { Recipe } from '../../core/model/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

/** Walls as a count and as millimetres, two ways of saying the same; the count is what is kept. */
export function WallFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  const thicknessMm = recipe.walls * recipe.lineMm
  return (
    <>
      <NumberBox
        label="Walls"
        value={recipe.walls}
        min={0}
        max={50}
        step={1}
        digits={0}
        unit="lines"
        onChange={(walls) => {
          write.edit({ recipe: { walls } })
        }}
      />
      <NumberBox
        label="Wall thickness"
        value={thicknessMm}
        min={0}
        max={20}
        step={recipe.lineMm}
        unit="mm"
        onChange={(mm) => {
          write.edit({ recipe: { walls: Math.round(mm / recipe.lineMm) } })
        }}
      />
    </>
  )
}
