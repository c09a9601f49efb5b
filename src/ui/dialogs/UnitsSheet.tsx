import { METRIC, type ShownUnits } from '../../core/words/shownUnits.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice, type Option } from '../fields/Choice.tsx'
import { Sheet } from '../fields/Sheet.tsx'

interface UnitsSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

const LENGTHS: readonly Option<ShownUnits['length']>[] = [
  { id: 'mm', name: 'Millimetres' },
  { id: 'in', name: 'Inches', detail: '1 in = 25.4 mm' },
]

const MASSES: readonly Option<ShownUnits['mass']>[] = [
  { id: 'g', name: 'Grams' },
  { id: 'oz', name: 'Ounces', detail: '1 oz = 28.3495 g' },
]

/** What the builder reads and types in, in every frame. */
export function UnitsSheet({ isOpen, onClose }: UnitsSheetProps) {
  const units = useAppState(({ workshop }) => workshop.units ?? METRIC)
  const { putUnits } = useActions()
  return (
    <Sheet title="Units" isOpen={isOpen} onClose={onClose}>
      <p className="hint">
        Yours, for every frame: fields, figures, drawings and paper. Nothing is rounded by it; saved
        files, CSV and --json stay in mm and g.
      </p>
      <Choice
        label="Lengths"
        value={units.length}
        options={LENGTHS}
        onChange={(length) => {
          putUnits({ ...units, length })
        }}
      />
      <Choice
        label="Masses"
        value={units.mass}
        options={MASSES}
        onChange={(mass) => {
          putUnits({ ...units, mass })
        }}
      />
      <p className="hint">
        Names stay as they are: M3 × 16, a 0.4 mm nozzle, the 250 g of a rule. So do densities,
        printer speeds and prices a kilogram. The currency stands with Prices in the title block.
      </p>
    </Sheet>
  )
}
