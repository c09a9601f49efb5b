import type { Census } from '../../core/model/census.ts'
import type { Part } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'
import { Button } from 'react-aria-components'
import { RECIPE_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { PickButton } from '../intake/PickButton.tsx'
import type { PartEdit } from './usePartEdit.ts'

interface ZoneFieldsProps {
  readonly part: Part
  readonly write: PartEdit
  /** Of the present settings; null until their layers are counted. */
  readonly census: Census | null
}

/** A second mesh inside which the part has an infill of its own: an arm's root, a wing's spar. */
export function ZoneFields({ part, write, census }: ZoneFieldsProps) {
  const { setZone } = useActions()
  const { id, zone, recipe } = part
  const choose = (
    <PickButton
      className="quiet"
      single
      accept=".stl,.obj,.3mf"
      onPick={({ files: [file] }) => {
        if (file !== undefined) void setZone(id, file)
      }}
    >
      {zone === null ? 'Choose its mesh' : 'Choose another'}
    </PickButton>
  )
  return (
    <div className="zone-field" role="group" aria-label="Zone with its own infill">
      <span>Zone with its own infill</span>
      {zone === null ? (
        <>
          {choose}
          <p className="hint">
            A mesh drawn in the part’s own place and unit, such as a block around an arm’s root.
            Walls and skins stay as they are.
          </p>
        </>
      ) : (
        <>
          <NumberBox
            label="Infill in the zone"
            bare
            limits={RECIPE_LIMITS.zonePct}
            value={recipe.zonePct}
            step={1}
            digits={1}
            unit="%"
            onChange={(zonePct) => {
              write.edit({ recipe: { zonePct } })
            }}
          />
          {choose}
          <Button className="quiet" onPress={() => void setZone(id, null)}>
            Remove
          </Button>
          <p className="hint file-name">{zone.fileName}</p>
          {census !== null && census.zone === null ? (
            <p className="caution">
              No infill room of the part lies in the zone, so it changes nothing. Draw it where the
              part is, in the same axes and unit.
            </p>
          ) : null}
        </>
      )}
    </div>
  )
}
