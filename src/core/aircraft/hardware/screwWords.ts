import type { JointScrews } from './jointHardware.ts'

/**
 * `12 × M3 × 10, 4 × M3 × 8`: what all joints together take, as first met; null without a screw.
 */
export function screwWords(joints: readonly Pick<JointScrews, 'screw' | 'count'>[]): string | null {
  const counts = new Map<string, number>()
  for (const { screw, count } of joints) {
    if (screw !== null) counts.set(screw, (counts.get(screw) ?? 0) + count)
  }
  const words = [...counts].map(([screw, count]) => `${count} × ${screw}`)
  const odd = joints.reduce((sum, { screw, count }) => sum + (screw === null ? count : 0), 0)
  if (odd > 0) words.push(`${odd} for which no stocked length fits`)
  return words.length === 0 ? null : words.join(', ')
}
