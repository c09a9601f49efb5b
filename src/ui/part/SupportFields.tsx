import { Switch } from 'react-aria-components'
import { SUPPORT_SHARE } from '../../core/figures/deposit.ts'
import { formatPercent } from '../../core/words/format.ts'
import { LONGEST_BRIDGE_MM } from '../../core/census/cut/bridges.ts'
import type { Recipe } from '../../core/model/settings.ts'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { PartEdit } from './usePartEdit.ts'
import { showLength } from '../show.ts'

const supportWords = () =>
  `Counted as columns ${formatPercent(SUPPORT_SHARE)} full, right up to the part; ` +
  `a gap of one layer lets them come off. Gaps up to ${showLength(LONGEST_BRIDGE_MM, 0)} between two ` +
  'sides are bridged and get none. Break supports off with gloves and eye protection: ' +
  'the stubs are sharp.'

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
          help="support"
          limits={RECIPE_LIMITS.supportAngleDeg}
          value={recipe.supportAngleDeg}
          step={1}
          digits={1}
          unit="°"
          hint={supportWords()}
          onChange={(supportAngleDeg) => {
            write.edit({ recipe: { supportAngleDeg } })
          }}
        />
      ) : null}
      <NumberBox
        label="Brim width"
        help="brim"
        limits={RECIPE_LIMITS.brimMm}
        value={recipe.brimMm}
        step={0.5}
        unit="mm"
        onChange={(brimMm) => {
          write.edit({ recipe: { brimMm } })
        }}
      />
    </>
  )
}
