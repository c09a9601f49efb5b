import type { PlateSummary } from './inspect.ts'

/** What a file of several parts holds, in whole sentences. */
export function plateWords({ groups, leftOut }: PlateSummary): string {
  const alike = groups.filter(({ count }) => count > 1)
  const single = groups.length - alike.length
  const words = alike.map(({ count, mirrored }) =>
    mirrored === 0 ? `${count} equal parts` : `${count} equal parts (${mirrored} mirrored)`,
  )
  if (single > 0) words.push(alike.length === 0 ? `${single} different parts` : `${single} other`)
  const scraps =
    leftOut === 0
      ? ''
      : ` ${leftOut} loose ${leftOut === 1 ? 'triangle belongs' : 'triangles belong'} to none of them and would be left out.`
  return `This file holds ${words.join(' and ')}.${scraps} They are priced together as one part until you choose otherwise.`
}
