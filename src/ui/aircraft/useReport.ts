import { useMemo } from 'react'
import { aircraftReport } from '../../core/report/aircraftReport.ts'
import type { AircraftReport, ReportPart } from '../../core/report/types.ts'
import { ledgerRows } from '../../state/derived.ts'
import { useAppState } from '../appContext.ts'
import { usePartShapes, type PartShapes } from './usePartShapes.ts'

/** The whole report, as the command line gives it; for sections that are open, since it asks for every mesh. */
export function useReport(): { readonly report: AircraftReport; readonly shapes: PartShapes } {
  const frame = useAppState((state) => state.frame)
  const rows = useAppState(ledgerRows)
  const shapes = usePartShapes(frame.parts)
  const report = useMemo(() => {
    const parts = rows.flatMap(({ part, material, figures, work }): ReportPart[] => {
      if (figures === null) return []
      const census = work.kind === 'done' ? work.census : null
      return [{ part, material, figures, census, facts: shapes.shapes.get(part.id) ?? null }]
    })
    return aircraftReport(parts, frame)
  }, [rows, frame, shapes.shapes])
  return { report, shapes }
}
