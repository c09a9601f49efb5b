import { useMemo } from 'react'
import { massOdds } from '../../../core/frame/odds.ts'
import type { AircraftView } from '../../../state/store/aircraftView.ts'
import { FigureList } from '../FigureList.tsx'
import { spanG, tenthMass } from '../words.ts'

/** The sums of the ledger, down to the margin. */
export function MassList({ view }: { readonly view: AircraftView }) {
  const { basicMassG, growthG, predictedMassG, limitG } = view.ledger
  const { rangeG } = useMemo(() => massOdds(view.doubt, view.ledger.basicMassG), [view])
  return (
    <FigureList
      of={[
        {
          words: 'Basic mass, all lines as they stand',
          figure: tenthMass(basicMassG),
          small: spanG(rangeG),
        },
        {
          words: 'Growth for what is not known yet',
          help: 'growth',
          figure: `+${tenthMass(growthG)}`,
        },
        { words: 'Predicted mass', figure: tenthMass(predictedMassG), strong: true },
        ...(limitG === null ? [] : [{ words: 'Limit', figure: tenthMass(limitG) }]),
      ]}
    />
  )
}
