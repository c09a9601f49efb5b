import { MOST_PIECES } from './split/findPieces.ts'
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
      : ` ${leftOut} loose ${leftOut === 1 ? 'triangle belongs' : 'triangles belong'} to none of them ` +
        'and would be left out.'
  return (
    `This file holds ${words.join(' and ')}.${scraps} They are priced together as one part until you ` +
    'choose otherwise.'
  )
}

/** Why a file of so many bodies is not offered to be taken apart; null where it is not that. */
export function crowdWords(bodies: number): string | null {
  if (bodies <= MOST_PIECES) return null
  return (
    `It holds ${bodies} loose bodies and is priced as one part. ` +
    `Up to ${MOST_PIECES} are taken apart into rows; more are lettering or a grille as a rule. ` +
    'If they are parts, export them in smaller files.'
  )
}
