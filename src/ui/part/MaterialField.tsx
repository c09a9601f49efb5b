import type { Material } from '../../core/model/figures.ts'
import { choosableMaterials } from '../../state/store/materialOf.ts'
import { useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { showNumber } from '../show.ts'
import { useShallow } from 'zustand/react/shallow'
import type { PartEdit } from './usePartEdit.ts'

interface MaterialFieldProps {
  readonly material: Material
  readonly write: PartEdit
}

export function MaterialField({ material, write }: MaterialFieldProps) {
  const materials = useAppState(useShallow(choosableMaterials))
  const caution = fumeCaution(material)
  return (
    <>
      <Choice
        label="Material"
        value={material.id}
        options={materials.map(({ id, name, densityGCm3 }) => ({
          id,
          name,
          detail: `${showNumber(densityGCm3.value, 2)} g/cm³`,
        }))}
        onChange={(materialId) => {
          write.edit({ materialId })
        }}
      />
      {caution === null ? null : <p className="caution">{caution}</p>}
    </>
  )
}

// Styrene plastics give off styrene when melted; fibre-filled ones give off fibre dust when cut or
// sanded.
function fumeCaution({ id, name }: Material): string | null {
  const word = `${id} ${name}`.toLowerCase()
  if (/\b(abs|asa)\b/.test(word))
    return (
      `${name} gives off styrene fumes while it prints: vent the room or the printer, and follow its ` +
      'safety data sheet and your local rules.'
    )
  if (/\b(cf|gf)\b|fibre/.test(word))
    return (
      `${name} sheds fibres when drilled or sanded: work wet, wear a mask and gloves, and follow its ` +
      'safety data sheet.'
    )
  return null
}
