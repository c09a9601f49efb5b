import { formatGrams, formatMoney } from '../../../core/words/format.ts'
import { lengthUnit, massUnit } from '../../../core/words/shownUnits.ts'
import { giveWords, toneWords } from '../../part/stiffness/BeamLine.tsx'
import type { PointWorth } from './useWhatIf.ts'
import { showCoins, showMass, showMm, showNumber, showTime } from '../../show.ts'

/** One of the figures that the small pictures show. */
export interface Measure {
  readonly id: Exclude<keyof PointWorth, 'gives'> | 'deflection' | 'tone'
  readonly title: string
  /** Null where nothing is known. */
  readonly valueOf: (worth: PointWorth) => number | null
  /** On the axis, without a unit. */
  readonly tick: (value: number) => string
  /** With its unit. */
  readonly words: (value: number) => string
}

export function measures(currency: string): readonly Measure[] {
  const hours = (value: number): string => showTime({ low: 0, mid: 3600 * value, high: 0 }).mid
  return [
    {
      id: 'massG',
      title: `Printed mass of the frame, ${massUnit()}`,
      valueOf: ({ massG }) => massG,
      tick: formatGrams,
      words: showMass,
    },
    {
      id: 'cost',
      title: `Cost of all that is printed, ${currency}`,
      valueOf: ({ cost }) => cost,
      tick: (value) => showCoins(value, currency),
      words: (value) => formatMoney(value, currency),
    },
    {
      id: 'timeS',
      title: 'Hours of all that is printed',
      valueOf: ({ timeS }) => timeS / 3600,
      tick: hours,
      words: (value) => `${hours(value)} h`,
    },
    {
      id: 'stiffness',
      title: 'Stiffness of the part, % of what it has now',
      valueOf: ({ stiffness }) => (stiffness === Infinity ? null : 100 * stiffness),
      tick: (value) => showNumber(value, 0),
      words: (value) => `${showNumber(value, 0)} %`,
    },
    {
      id: 'deflection',
      title: `How far it gives under its load as a beam, ${lengthUnit()}`,
      valueOf: ({ gives }) => gives?.deflectionMm ?? null,
      tick: (value) => showMm(value, value < 1 ? 3 : 1),
      words: (deflectionMm) => giveWords({ deflectionMm }),
    },
    {
      id: 'tone',
      title: 'Its first tone as a beam, Hz',
      valueOf: ({ gives }) => gives?.firstHz ?? null,
      tick: (value) => showNumber(value, 0),
      words: toneWords,
    },
  ]
}
