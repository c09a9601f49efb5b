import type { Scale } from './ScaleFields.tsx'

/** What a scale shows at least: by a step more than the tare that stands on it. g */
export function leastOnScale({ stepG, tareG }: Scale): number {
  return tareG > 0 ? tareG + stepG : 0
}
