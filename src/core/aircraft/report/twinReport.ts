import type { Aircraft } from '../../model/aircraft.ts'
import type { Frame } from '../../model/frame.ts'
import type { FrameSum } from '../../frame/types.ts'
import { armShake, tipMassG } from '../twin/armShake.ts'
import type { ArmShake } from '../twin/armShake.ts'
import { frameSides } from '../twin/sides.ts'
import { hoveringSetup } from './hoveringSetup.ts'
import { twinEntry } from './twinEntry.ts'
import type { ReportPart, TwinEntry, TwinReport } from './types.ts'

/** The frame beside its carbon twins. */
export function twinReport(
  parts: readonly ReportPart[],
  sum: FrameSum,
  { aircraft, carbon }: Pick<Frame, 'aircraft' | 'carbon'>,
): TwinReport {
  const twins = parts.flatMap((one) => twinEntry(one, aircraft.twin) ?? [])
  const cut = new Map(twins.flatMap(({ partId, twin }) => (twin ? [[partId, twin]] : [])))
  const sides = frameSides({
    sum,
    cut,
    bought: carbon,
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
  return parts.flatMap(({ part: { id, name, role }, pieceG, facts }) => {
    const twin = twins.find(({ partId }) => partId === id)?.twin ?? null
    const freeMm = aircraft.twin.freeMm?.[id]
    if (twin === null || !facts?.outline || (role !== 'arm' && freeMm === undefined)) return []
    const { outline } = facts
    const massG = pieceG.mid
    return armShake({ partId: id, name, outline, twin, massG, freeMm }, flight, tipG, auwG) ?? []
  })
}
