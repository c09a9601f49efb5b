import { memo, useState, type ReactNode } from 'react'
import { Button } from 'react-aria-components'
import { formatMoney } from '../../core/words/format.ts'
import type { AppState } from '../../state/store/types.ts'
import { MaterialsSheet } from '../dialogs/MaterialsSheet.tsx'
import { PricesSheet } from '../dialogs/PricesSheet.tsx'
import { PrinterSheet } from '../dialogs/PrinterSheet.tsx'
import { materialsInUse } from './materialsInUse.ts'
import { SHEETS, type SheetId } from './address.ts'
import { useCostBlame } from './useCostBlame.ts'
import { useLateAppState } from '../useLateAppState.ts'
import { lengthUnit, massUnit } from '../../core/words/shownUnits.ts'
import { dayOf } from '../../core/words/day.ts'

const frameOf = ({ frame }: AppState) => frame

type PaneId = 'materials' | 'printer' | 'prices'

interface TitleBlockProps {
  readonly sheet: SheetId
  /** Title of the sheet, where it is more than its name. */
  readonly title?: string
  readonly below?: ReactNode
  /** "slant: by the bar", "1:2"; left out where nothing is drawn to a scale. */
  readonly scale?: string
}

/** What every figure on the sheet rests on. Its cells are the fields: each opens what it names. */
export const TitleBlock = memo(function TitleBlock(props: TitleBlockProps) {
  const { sheet, title, below, scale } = props
  const frame = useLateAppState(frameOf)
  const { printer, printers = [], prices, name } = frame
  const [worst] = useCostBlame()
  const [day] = useState(() => dayOf(new Date()))
  const [open, setOpen] = useState<PaneId | null>(null)
  const close = () => {
    setOpen(null)
  }
  const number = SHEETS.findIndex(({ id }) => id === sheet) + 1
  const used = materialsInUse(frame)
  return (
    <footer className="title-block" aria-label="Title block">
      <div className="block-cell block-title">
        <span className="block-head">Title</span>
        <strong>{title ?? SHEETS[number - 1]?.name}</strong>
        <span className="block-below">{below ?? name}</span>
      </div>
      <div className="block-cell">
        <span className="block-head">Sheet</span>
        {number} of {SHEETS.length}
      </div>
      {scale === undefined ? null : (
        <div className="block-cell">
          <span className="block-head">Scale</span>
          {scale}
        </div>
      )}
      <OpeningCell
        opens="printer"
        head="Printer"
        words={printers.length === 0 ? printer.name : `${printer.name} and ${printers.length} more`}
        onOpen={setOpen}
      />
      <OpeningCell
        opens="prices"
        head="Prices"
        words={
          `${formatMoney(prices.electricityPerKwh, prices.currency)}/kWh, ` +
          `${formatMoney(prices.wearPerHour, prices.currency)}/h wear`
        }
        onOpen={setOpen}
      />
      <OpeningCell opens="materials" head="Materials" words={used} onOpen={setOpen} />
      <div className="block-cell">
        <span className="block-head">Units</span>
        {lengthUnit()}, {massUnit()}, {prices.currency}
      </div>
      <div className="block-cell">
        <span className="block-head">Reckoned</span>
        {day}
      </div>
      {worst === undefined ? null : (
        <div className="block-cell block-doubt">
          <span className="block-head">Cost unsure most by</span>
          {worst.name}, ± {formatMoney(worst.money, prices.currency)}
        </div>
      )}
      {open === 'materials' ? <MaterialsSheet isOpen onClose={close} /> : null}
      {open === 'printer' ? <PrinterSheet isOpen onClose={close} /> : null}
      {open === 'prices' ? <PricesSheet isOpen onClose={close} /> : null}
    </footer>
  )
})

interface OpeningCellProps {
  readonly opens: PaneId
  readonly head: string
  readonly words: string
  readonly onOpen: (id: PaneId) => void
}

/** Not drawn again with every figure of the sheet: its words seldom change. */
const OpeningCell = memo(function OpeningCell({ opens, head, words, onOpen }: OpeningCellProps) {
  return (
    <div className="block-cell">
      <span className="block-head">{head}</span>
      <Button
        className="quiet term"
        aria-label={`${head}: ${words}`}
        onPress={() => {
          onOpen(opens)
        }}
      >
        {words}
      </Button>
    </div>
  )
})
