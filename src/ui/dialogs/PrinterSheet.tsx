import { PRINTER_FIELDS, PRINTERS } from '../../core/data/printers.ts'
import type { Printer } from '../../core/model/figures.ts'
import { toldApart } from '../../core/runs/runPrinters.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { PRINTER_LIMITS } from '../../core/data/limits.ts'
import { NumberBox } from '../fields/NumberBox.tsx'
import { Sheet } from '../fields/Sheet.tsx'
import { MineLine } from '../workshop/MineLine.tsx'
import { HabitsStep } from './habits/HabitsStep.tsx'

const NO_PRINTERS: readonly Printer[] = []

interface PrinterSheetProps {
  readonly isOpen: boolean
  readonly onClose: () => void
}

/** The printer decides the hours. A class to start from, every number to type over. */
export function PrinterSheet({ isOpen, onClose }: PrinterSheetProps) {
  const printer = useAppState((state) => state.frame.printer)
  const { putPrinter } = useActions()
  const others = useAppState((state) => state.frame.printers) ?? NO_PRINTERS
  const isClass = PRINTERS.some(({ id }) => id === printer.id)
  const own = (patch: Partial<Printer>) => {
    const changed = { ...printer, ...patch }
    putPrinter(
      isClass ? toldApart({ ...changed, id: 'own', name: 'Own printer' }, others) : changed,
    )
  }
  return (
    <Sheet title="Printer" isOpen={isOpen} onClose={onClose}>
      <MineLine kind="printer" />
      <p className="hint">
        Start from the class nearest to yours, then type what you know. Hours follow at once.
      </p>
      <Choice
        label="Class"
        value={isClass ? printer.id : null}
        placeholder={printer.name}
        options={PRINTERS.map(({ id, name }) => ({ id, name }))}
        onChange={(id) => {
          const found = PRINTERS.find((each) => each.id === id)
          if (found !== undefined) putPrinter(toldApart(found, others))
        }}
      />
      {PRINTER_FIELDS.map(({ key, label, unit, explain }) => (
        <NumberBox
          key={key}
          label={label}
          limits={PRINTER_LIMITS[key]}
          value={printer[key]}
          unit={unit}
          hint={explain}
          step={0.1}
          onChange={(value) => {
            own({ [key]: value })
          }}
        />
      ))}
      {(['x', 'y', 'z'] as const).map((axis, i) => (
        <NumberBox
          key={axis}
          label={`Bed, ${axis}`}
          limits={PRINTER_LIMITS.bedMm}
          value={printer.bedMm[i] ?? 0}
          step={1}
          digits={1}
          unit="mm"
          onChange={(value) => {
            const [x, y, z] = printer.bedMm
            own({ bedMm: [i === 0 ? value : x, i === 1 ? value : y, i === 2 ? value : z] })
          }}
        />
      ))}
      <HabitsStep />
    </Sheet>
  )
}
