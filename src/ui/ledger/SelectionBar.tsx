import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import type { Limits } from '../../core/data/limits.ts'
import type { Recipe } from '../../core/model/settings.ts'
import { choosableMaterials } from '../../state/store/materialOf.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { useRoleOptions } from '../workshop/useRoles.ts'

interface SelectionBarProps {
  readonly ids: readonly string[]
  /**
   * Called before the bar goes because its own button was pressed: the focus needs another place.
   */
  readonly onLeave: () => void
}

/** What can be done to all ticked parts at once. */
export function SelectionBar({ ids, onLeave }: SelectionBarProps) {
  const actions = useActions()
  const readState = useReadState()
  const materials = useAppState(useShallow(choosableMaterials))
  const parts = useAppState((state) => state.frame.parts)
  const roles = useRoleOptions()
  const [copiedFrom, setCopiedFrom] = useState<string | null>(null)
  const copyRecipe = (fromId: string) => {
    const source = readState().frame.parts.find(({ id }) => id === fromId)
    if (source === undefined) return
    setCopiedFrom(fromId)
    actions.updateParts(ids, { recipe: source.recipe })
  }
  const ticked = parts.filter(({ id }) => ids.includes(id))
  const field = (
    label: string,
    unit: string,
    limits: Limits,
    step: number,
    read: (recipe: Recipe) => number,
    write: (value: number) => Partial<Recipe>,
  ) => (
    <NumberBox
      label={label}
      limits={limits}
      value={sameOf(ticked.map(({ recipe }) => read(recipe)))}
      step={step}
      unit={unit}
      onChange={(value) => {
        actions.updateParts(ids, { recipe: write(value) })
      }}
    />
  )
  return (
    <div className="selection-bar" role="toolbar" aria-label="Ticked parts">
      <strong>
        {ids.length} part{ids.length === 1 ? '' : 's'} ticked
      </strong>
      <Choice
        label="Recipe for"
        value={null}
        placeholder="a role"
        options={roles}
        onChange={(role) => {
          actions.applyRole(ids, role)
        }}
      />
      <Choice
        label="Recipe of"
        value={copiedFrom}
        placeholder="another part"
        options={parts.map(({ id, name }) => ({ id, name }))}
        onChange={copyRecipe}
      />
      <Choice
        label="Material"
        value={null}
        placeholder="choose"
        options={materials.map(({ id, name }) => ({ id, name }))}
        onChange={(materialId) => {
          actions.updateParts(ids, { materialId })
        }}
      />
      {field(
        'Infill of all',
        '%',
        RECIPE_LIMITS.infillPct,
        1,
        ({ infillPct }) => infillPct,
        (infillPct) => ({ infillPct }),
      )}
      {field(
        'Walls of all',
        'lines',
        RECIPE_LIMITS.walls,
        1,
        ({ walls }) => walls,
        (walls) => ({ walls }),
      )}
      {field(
        'Skins of all',
        'layers',
        RECIPE_LIMITS.topSkins,
        1,
        ({ topSkins, bottomSkins }) => (topSkins === bottomSkins ? topSkins : NaN),
        (count) => ({ topSkins: count, bottomSkins: count }),
      )}
      {field(
        'Layer of all',
        'mm',
        RECIPE_LIMITS.layerMm,
        0.01,
        ({ layerMm }) => layerMm,
        (layerMm) => ({ layerMm }),
      )}
      <Button
        className="quiet"
        onPress={() => {
          actions.duplicateParts(ids)
        }}
      >
        Duplicate
      </Button>
      <Button
        className="quiet"
        onPress={() => {
          onLeave()
          actions.removeParts(ids)
        }}
      >
        Remove
      </Button>
      <Button
        className="quiet"
        onPress={() => {
          onLeave()
          actions.select([])
        }}
      >
        Untick all
      </Button>
    </div>
  )
}

/** What all of them have; null where they differ. */
function sameOf(values: readonly number[]): number | null {
  const [first] = values
  return first !== undefined && values.every((value) => value === first) ? first : null
}
