import type { LengthUnit, MeshMeasure } from '../../core/model/mesh.ts'
import { unitToMm } from '../../core/model/units.ts'
import { Choice } from '../fields/Choice.tsx'
import { showSide } from '../show.ts'
import type { PartEdit } from './usePartEdit.ts'
import { lengthUnit } from '../../core/words/shownUnits.ts'

const UNITS: readonly { readonly id: LengthUnit; readonly name: string }[] = [
  { id: 'millimetre', name: 'Millimetres' },
  { id: 'inch', name: 'Inches' },
  { id: 'centimetre', name: 'Centimetres' },
  { id: 'metre', name: 'Metres' },
  { id: 'foot', name: 'Feet' },
  { id: 'micron', name: 'Microns' },
]

interface UnitFieldProps {
  readonly unit: LengthUnit
  readonly measure: MeshMeasure | null
  readonly write: PartEdit
}

/** The unit the file was drawn in; each choice shows how large the part would then be. */
export function UnitField({ unit, measure, write }: UnitFieldProps) {
  return (
    <Choice
      label="Drawn in"
      value={unit}
      options={UNITS.map(({ id, name }) =>
        measure === null ? { id, name } : { id, name, detail: sizeIn(measure, unit, id) },
      )}
      hint="STL and OBJ files do not say their unit. Open the list to see the size in each."
      onChange={(next) => {
        write.edit({ unit: next })
      }}
    />
  )
}

function sizeIn(measure: MeshMeasure, now: LengthUnit, then: LengthUnit): string {
  const { min, max } = measure.boundsMm
  const scale = unitToMm(then) / unitToMm(now)
  const sides = [max[0] - min[0], max[1] - min[1], max[2] - min[2]]
  return `${sides.map((side) => showSide(side * scale)).join(' × ')} ${lengthUnit()}`
}
