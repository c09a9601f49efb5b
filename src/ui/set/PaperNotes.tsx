import { useMemo } from 'react'
import { cautionsOf } from '../../core/aircraft/report/cautions.ts'
import { formatMoney } from '../../core/words/format.ts'
import { aircraftView } from '../../state/store/aircraftView.ts'
import { materialOf } from '../../state/store/materialOf.ts'
import { useAppState } from '../appContext.ts'
import { showNumber } from '../show.ts'
import { DrawnSheet } from './DrawnSheet.tsx'
import { TitleBlock } from './TitleBlock.tsx'
import { toldWords } from '../../core/words/toldWords.ts'

/**
 * The last page of the set: what was taken for granted and from where, how the ranges are meant,
 * and the cautions.
 */
export function PaperNotes() {
  const frame = useAppState((state) => state.frame)
  const { sum } = useAppState(aircraftView)
  const { printer, prices, aircraft, carbon } = frame
  const hasCarbon = carbon !== null
  const materials = useMemo(
    () => [...new Set(frame.parts.map(({ materialId }) => materialOf(frame, materialId)))],
    [frame],
  )
  const cautions = cautionsOf(aircraft, sum.leftOut, [], null)
  return (
    <DrawnSheet
      className="notes-sheet"
      title="Assumptions, sources, cautions"
      block={<TitleBlock sheet="bench" title="Notes" />}
    >
      <div className="paper-notes">
        <ol>
          <li>
            Every figure stands with its range: 19 of 20 lie inside, as far as the errors are known.
            Weighed parts count as weighed.
          </li>
          <li>
            Printer: {printer.name}. {formatMoney(prices.electricityPerKwh, prices.currency)} a kWh,{' '}
            {formatMoney(prices.wearPerHour, prices.currency)} wear an hour.
          </li>
          {materials.map(({ id, name, densityGCm3, pricePerKg }) => (
            <li key={id}>
              {name}: {showNumber(densityGCm3.value, 3)} g/cm³ ({densityGCm3.mark};{' '}
              {densityGCm3.source}), {formatMoney(pricePerKg.value, prices.currency)} a kg (
              {pricePerKg.source}).
            </li>
          ))}
          {cautions.map(({ code, message }) => (
            <li key={code}>{toldWords(message)}</li>
          ))}
          <li>
            {hasCarbon
              ? 'Carbon dust is sharp, harmful to breathe, and conducts: cut and drill it wet, ' +
                'with a fitted mask and gloves. '
              : ''}
            A printed arm is not proven by its mass: load-test one by hand, propellers off. Follow
            your local rules, and ask someone qualified where in doubt.
          </li>
        </ol>
      </div>
    </DrawnSheet>
  )
}
