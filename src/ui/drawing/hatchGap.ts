/** Hatches this far apart are still seen as such. px */
export const LEAST_GAP_PX = 3.5
const MOST_GAP_PX = 16

/** As far apart as infill lines of that share are, as far as that can be drawn. */
export function hatchGapPx(pxPerMm: number, lineMm: number, infillPct: number): number {
  const gapPx = (pxPerMm * lineMm) / Math.max(infillPct / 100, 0.01)
  return Math.min(MOST_GAP_PX, Math.max(LEAST_GAP_PX, gapPx))
}
