import { Switch } from 'react-aria-components'
import type { Recipe } from '../../core/settings.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'

export function SupportFields({
  recipe,
  write,
}: {
  readonly recipe: Recipe
  readonly write: PartEdit
}) {
  return (
    <>
      <Switch
        className="switch"
        isSelected={recipe.supports}
        onChange={(supports) => {
          write.edit({ recipe: { supports } })
        }}
      >
        <span className="switch-label">Supports</span>
        <span className="switch-track" aria-hidden="true" />
      </Switch>
      {recipe.supports ? (
        <NumberBox
          label="Overhang that holds itself, from upright"
          value={recipe.supportAngleDeg}
          min={0}
          max={89}
          step={1}
          digits={0}
          unit="°"
          hint="Break supports off with gloves and eye protection: the stubs are sharp."
          onChange={(supportAngleDeg) => {
            write.edit({ recipe: { supportAngleDeg } })
          }}
        />
      ) : null}
      <NumberBox
        label="Brim width"
        value={recipe.brimMm}
        min={0}
        max={30}
        step={0.5}
        unit="mm"
        onChange={(brimMm) => {
          write.edit({ recipe: { brimMm } })
        }}
      />
    </>
  )
}
