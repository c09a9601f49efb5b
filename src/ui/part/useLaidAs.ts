import { useMemo } from 'react'
import { laidRecipe } from '../../core/figures/laidRecipe.ts'
import type { LedgerRow } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { censusOf } from '../ledger/partWork.ts'
import { laidInLayer, laidInPiece, type LaidShare } from './laidShares.ts'

/**
 * What a piece is laid as, or one layer of it (0 is the lowest); none until its layers are counted.
 */
export function useLaidAs(row: LedgerRow, layer: number | null): readonly LaidShare[] {
  const { part, figures, sum, stale, work } = row
  const printer = useAppState((state) => state.frame.printer)
  const census = stale ? null : censusOf(work)
  return useMemo(() => {
    if (figures === null) return []
    if (layer === null) return laidInPiece(figures, sum)
    if (census === null) return []
    return laidInLayer(layer, census, laidRecipe(part, printer), figures, sum)
  }, [census, figures, layer, part, printer, sum])
}
