import { showNumber } from '../../show.ts'
import type { ChosenLoad, EndName } from '../../../core/stiffness/part/chooseLoad.ts'

/** Ends of the part as it lies on the bed. */
export const END_WORDS: Readonly<Record<EndName, string>> = {
  'x-low': 'Left end',
  'x-high': 'Right end',
  'y-low': 'Front end',
  'y-high': 'Back end',
  'z-low': 'Bottom',
  'z-high': 'Top',
}

const WAY_WORDS = { x: 'to the right', y: 'to the back', z: 'upwards' } as const

/** “Held at its joints, pushed upwards at the screw bores of its free end by 6.1 N.” */
export function caseWords(
  { held, pushed, direction }: Pick<ChosenLoad, 'held' | 'pushed' | 'direction'>,
  loadN: number,
): string {
  const hold = held === 'joints' ? 'at its joints' : `at its ${END_WORDS[held].toLowerCase()}`
  const push =
    pushed === 'bores'
      ? 'the screw bores of its free end'
      : `its ${END_WORDS[pushed].toLowerCase()}`
  return `Held ${hold}, pushed ${WAY_WORDS[direction]} at ${push} by ${showNumber(loadN, 1)} N`
}
