import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useShallow } from 'zustand/react/shallow'
import { ROLES } from '../../core/data/roles.ts'
import type { RoleId } from '../../core/model/frame.ts'
import { materialsOf } from '../../state/store/materialOf.ts'
import { useActions, useAppState, useReadState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'

const ROLE_IDS = Object.keys(ROLES) as RoleId[]

/** What can be done to all ticked parts at once. */
export function SelectionBar({ ids }: { readonly ids: readonly string[] }) {
  const actions = useActions()
  const readState = useReadState()
  const materials = useAppState(useShallow((state) => materialsOf(state.frame)))
  const parts = useAppState((state) => state.frame.parts)
  const [copiedFrom, setCopiedFrom] = useState<string | null>(null)
  const copyRecipe = (fromId: string) => {
    const source = readState().frame.parts.find(({ id }) => id === fromId)
    if (source === undefined) return
    setCopiedFrom(fromId)
    actions.updateParts(ids, { recipe: source.recipe })
  }
  return (
    <div className="selection-bar" role="toolbar" aria-label="Ticked parts">
      <strong>
        {ids.length} part{ids.length === 1 ? '' : 's'} ticked
      </strong>
      <Choice
        label="Recipe for"
        value={null}
        placeholder="a role"
        options={ROLE_IDS.map((id) => ({ id, name: ROLES[id].name }))}
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
          actions.removeParts(ids)
        }}
      >
        Remove
      </Button>
      <Button
        className="quiet"
        onPress={() => {
          actions.select([])
        }}
      >
        Untick all
      </Button>
    </div>
  )
}
