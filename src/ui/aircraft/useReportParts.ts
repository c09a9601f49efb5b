import { useMemo } from 'react'
import type { ReportPart } from '../../core/aircraft/report/types.ts'
import { useShown } from './ShownAircraft.tsx'
import { usePartShapes, type PartShapes } from './usePartShapes.ts'

interface PartsInUse {
  /**
   * Null until the meshes were looked at for the first time: without them most of a report would be
   * missing.
   */
  readonly parts: readonly ReportPart[] | null
  readonly shapes: PartShapes
}

/**
 * The parts as the report wants them; for sections that are open, since it asks for every mesh.
 * Each section works out its own piece of the report, by the functions the command line uses: the
 * whole, made in each, kept input waiting for 100 ms.
 */
export function useReportParts(): PartsInUse {
  const { frame, rows } = useShown()
  const shapes = usePartShapes(frame.parts)
  const isFirst = shapes.pending > 0 && shapes.shapes.size === 0
  const parts = useMemo(() => {
    if (isFirst) return null
    return rows.flatMap(({ part, sum, work }): ReportPart[] => {
      if (sum === null) return []
      const census = work.kind === 'done' ? work.census : null
      const traits = shapes.shapes.get(part.id) ?? null
      return [{ ...sum, census, traits }]
    })
  }, [rows, shapes.shapes, isFirst])
  return { parts, shapes }
}
