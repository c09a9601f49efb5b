import type { RefObject } from 'react'
import { useIsPrinting } from '../useIsPrinting.ts'
import { useWidth } from './useWidth.ts'

/** A chart drawn so wide keeps its words legible on a page of A4 or Letter, either way round. px */
const PAPER_PX = 720

/**
 * As `useWidth`, and on paper no wider than a page: made smaller by the printer, its words would
 * come out too small to read. For what is drawn at once; a worker's answer would come too late.
 */
export function useChartWidth(of: RefObject<Element | null>, first: number): number {
  const width = useWidth(of, first)
  return useIsPrinting() ? Math.min(PAPER_PX, width) : width
}
