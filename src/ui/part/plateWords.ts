import type { PlateSummary } from '../../core/mesh/inspect.ts'

/** How many parts a plate holds, for its row; null for a single part. */
export function plateMark(plate: PlateSummary | undefined): string | null {
  if (plate === undefined) return null
  return `holds ${plate.groups.reduce((sum, { count }) => sum + count, 0)} parts`
}
