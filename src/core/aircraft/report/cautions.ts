import type { FrameBalance } from '../balance/frameBalance.ts'
import { PLATES } from '../../data/plates.ts'
import { FLIGHT_CAUTIONS } from '../flight/cautions.ts'
import type { LeftOut } from '../../frame/types.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import { RULES_NOTE } from '../../data/massLines.ts'
import type { Caution, TwinEntry } from './types.ts'

/** What has to be said beside the numbers of this aircraft, what is missing from them first. */
export function cautionsOf(
  aircraft: Aircraft,
  leftOut: readonly LeftOut[],
  twins: readonly TwinEntry[],
  balance: FrameBalance | null,
): readonly Caution[] {
  const cautions: Caution[] = []
  const unknown = namesOf(leftOut.filter(({ weighed }) => !weighed))
  if (unknown !== '') {
    const message =
      `Without figures, and so left out of every sum: ${unknown}. ` +
      'The aircraft is heavier than it reads here.'
    cautions.push({ code: 'parts-missing', message })
  }
  const weighed = namesOf(leftOut.filter((part) => part.weighed))
  if (weighed !== '') {
    const message =
      `Without figures, but weighed: ${weighed}. The scale’s grams are in every mass; ` +
      'cost and hours are without them.'
    cautions.push({ code: 'parts-by-scale', message })
  }
  if (balance !== null && balance.unplaced.length > 0) {
    const grams = balance.unplacedG.toFixed(balance.unplacedG < 10 ? 1 : 0)
    const message = `${grams} g have no place yet and are left out of the balance: ${balance.unplaced.join(', ')}.`
    cautions.push({ code: 'not-placed', message })
  }
  if (twins.some(({ twin }) => twin !== null)) {
    cautions.push({ code: 'plate-dust', message: PLATES[aircraft.twin.plate].caution })
  }
  if (aircraft.flight !== null || aircraft.wing !== null) {
    cautions.push(
      { code: 'props', message: FLIGHT_CAUTIONS.props },
      { code: 'pack', message: FLIGHT_CAUTIONS.pack },
      {
        code: 'first-flight',
        message: aircraft.wing === null ? FLIGHT_CAUTIONS.firstFlight : FLIGHT_CAUTIONS.firstThrow,
      },
    )
  }
  if (aircraft.massLines.length > 0) {
    const message = `Mass lines are as they were read on the day each states, and no legal advice; ${RULES_NOTE}.`
    cautions.push({ code: 'rules', message })
  }
  return cautions
}

function namesOf(parts: readonly LeftOut[]): string {
  return parts.map(({ name }) => `“${name}”`).join(', ')
}
