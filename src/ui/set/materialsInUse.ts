import type { Frame } from '../../core/model/frame.ts'
import { materialOf } from '../../state/store/materialOf.ts'

/** The plastics of a frame in words: by name up to three, else their count. */
export function materialsInUse(frame: Frame): string {
  const names = new Set(frame.parts.map(({ materialId }) => materialOf(frame, materialId).name))
  return names.size > 3 ? `${names.size} in use` : [...names].join(', ')
}
