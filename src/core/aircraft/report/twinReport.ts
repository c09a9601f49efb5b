import type { Aircraft } from '../../model/aircraft.ts'
import type { Frame } from '../../model/frame.ts'
import { weighedMassG } from '../../frame/ledger.ts'
import { exactRange } from '../../model/ranges.ts'
import { armShake, tipMassG } from '../twin/armShake.ts'
import type { ArmShake } from '../twin/armShake.ts'
import { frameSides } from '../twin/sides.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import { twinEntry } from './twinEntry.ts'
import type { ReportPart, TwinEntry, TwinReport } from './types.ts'

/** The frame beside its carbon twins. */
export function twinReport(parts: readonly ReportPart[], { aircraft, carbon }: Frame): TwinReport {
  const twins = parts.flatMap((one) => twinEntry(one, aircraft.twin) ?? [])
  const sides = frameSides({
    lines: parts.map(({ part, figures }) => {
      const weighedG = weighedMassG(aircraft.weighedG, part.id)
      const massG = weighedG === null ? figures.massG : exactRange(weighedG)
      return {
        quantity: part.quantity,
        printed: { ...figures, massG },
        twin: twins.find(({ partId }) => partId === part.id)?.twin ?? null,
      }
    }),
    bought: carbon,
    restG: aircraft.items.reduce((sum, item) => sum + item.quantity * item.massG, 0),
    deliveryDays: aircraft.twin.deliveryDays,
    flight: hoveringSetup(aircraft),
  })
  return {
    plate: aircraft.twin.plate,
    parts: twins,
    sides,
    arms: armsOf(parts, twins, aircraft, sides.printed.auwG.mid),
  }
}

function armsOf(
  parts: readonly ReportPart[],
  twins: readonly TwinEntry[],
  aircraft: Aircraft,
  auwG: number,
): readonly ArmShake[] {
  const flight = hoveringSetup(aircraft)
  if (flight === null) return []
  const tipG = tipMassG(aircraft.items, flight.motors)
  return parts.flatMap(({ part: { id, name, role }, figures, facts }) => {
    const twin = twins.find(({ partId }) => partId === id)?.twin ?? null
    const freeMm = aircraft.twin.freeMm?.[id]
    if (twin === null || !facts?.outline || (role !== 'arm' && freeMm === undefined)) return []
    const massG = weighedMassG(aircraft.weighedG, id) ?? figures.massG.mid
    const { outline } = facts
    return armShake({ partId: id, name, outline, twin, massG, freeMm }, flight, tipG, auwG) ?? []
  })
}
