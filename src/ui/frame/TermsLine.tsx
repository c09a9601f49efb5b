import { useState } from 'react'
import { Button } from 'react-aria-components'
import { formatMoney } from '../../core/words/format.ts'
import { useAppState } from '../appContext.ts'
import { MaterialsSheet } from '../dialogs/MaterialsSheet.tsx'
import { PricesSheet } from '../dialogs/PricesSheet.tsx'
import { PrinterSheet } from '../dialogs/PrinterSheet.tsx'
import { useCostBlame } from './useCostBlame.ts'

type SheetId = 'materials' | 'printer' | 'prices'

/** What every figure on the page rests on, in one sentence; each piece of it opens its sheet. */
export function TermsLine() {
  const printer = useAppState((state) => state.frame.printer)
  const prices = useAppState((state) => state.frame.prices)
  const [worst] = useCostBlame()
  const [open, setOpen] = useState<SheetId | null>(null)
  const close = () => {
    setOpen(null)
  }
  const link = (id: SheetId, words: string, label: string) => (
    <Button
      className="quiet term"
      aria-label={`${label}: ${words}`}
      onPress={() => {
        setOpen(id)
      }}
    >
      {words}
    </Button>
  )
  return (
    <div className="terms">
      <span>Reckoned for</span>
      {link('printer', printer.name, 'Printer')}
      <span>at</span>
      {link(
        'prices',
        `${formatMoney(prices.electricityPerKwh, prices.currency)} a kWh, ${formatMoney(prices.wearPerHour, prices.currency)} wear an hour`,
        'Prices',
      )}
      <span>with</span>
      {link('materials', 'these materials', 'Materials')}
      {worst === undefined ? null : (
        <span>
          · cost unsure most by {lowerFirst(worst.name)}, ±{' '}
          {formatMoney(worst.money, prices.currency)}
        </span>
      )}
      {open === 'materials' ? <MaterialsSheet isOpen onClose={close} /> : null}
      {open === 'printer' ? <PrinterSheet isOpen onClose={close} /> : null}
      {open === 'prices' ? <PricesSheet isOpen onClose={close} /> : null}
    </div>
  )
}

function lowerFirst(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1)
}
