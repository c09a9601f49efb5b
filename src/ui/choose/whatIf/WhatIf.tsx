import '../../styles/aircraft.css'
import '../../styles/choose.css'
import { Section } from '../../aircraft/Section.tsx'
import { usePartShapes } from '../../aircraft/usePartShapes.ts'
import { useAppState } from '../../appContext.ts'
import { usePartEdit } from '../../part/usePartEdit.ts'
import { materialOf } from '../../../state/store/materialOf.ts'
import type { LedgerRow } from '../../../state/store/derived.ts'
import { useId, useMemo } from 'react'
import { MeasureCurves } from './MeasureCurves.tsx'
import { measures } from './measures.ts'
import type { Measure } from './measures.ts'
import { WhatIfTable } from './WhatIfTable.tsx'
import { useWhatIf, type WhatIfPanel, type WhatIfPoint } from './useWhatIf.ts'

/**
 * Grams, money, hours and stiffness over each setting of a part, in small pictures on common axes.
 */
export function WhatIf({ row }: { readonly row: LedgerRow }) {
  const { part } = row
  const own = useMemo(() => [part], [part])
  const { shapes } = usePartShapes(own)
  const panels = useWhatIf(row, shapes.get(part.id) ?? null)
  const frame = useAppState((state) => state.frame)
  const write = usePartEdit(part.id)
  const nameOf = (id: string): string => materialOf(frame, id).name
  const shown = panels.filter(({ points }) => points.length > 1)
  const take = ({ way, isNow }: WhatIfPoint) => {
    if (!isNow) write.edit(way)
  }
  const twinId = useId()
  const common = { partName: part.name, panels: shown, nameOf, onTake: take, twinId }
  return (
    <Section title="What if" summary={`${part.name}, one setting at a time`}>
      <div className="craft-full">
        {shown.length === 0 ? (
          <p className="hint">Its layers are being counted.</p>
        ) : (
          <>
            {measures(frame.prices.currency)
              .filter(({ valueOf }) => hasValues(shown, valueOf))
              .map((measure) => (
                <MeasureCurves key={measure.id} measure={measure} {...common} />
              ))}
            <WhatIfTable currency={frame.prices.currency} {...common} />
          </>
        )}
      </div>
    </Section>
  )
}

/** A picture is drawn once there is something in it: its width is measured when it comes. */
function hasValues(panels: readonly WhatIfPanel[], valueOf: Measure['valueOf']): boolean {
  return panels.some(({ points }) => points.some(({ worth }) => valueOf(worth) !== null))
}
