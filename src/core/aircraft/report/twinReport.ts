import type { Aircraft } from '../../model/aircraft.ts'
import type { Frame } from '../../model/frame.ts'
import type { FrameSum } from '../../frame/types.ts'
import { toneDoubt } from '../../doubt/stiffness.ts'
import { laidOf } from '../../stiffness/part/laidOf.ts'
import { armShake, tipMassG } from '../twin/armShake.ts'
import type { ArmBeam, ArmShake } from '../twin/armShake.ts'
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
  return parts.flatMap((one) => {
    const { pieceG, traits } = one
    const { id, name, role } = one.part
    const twin = twins.find(({ partId }) => partId === id)?.twin ?? null
    const freeMm = aircraft.twin.freeMm?.[id]
    if (twin === null || !traits?.outline || (role !== 'arm' && freeMm === undefined)) return []
    const { outline } = traits
    const massG = pieceG.mid
    const arm = {
      partId: id,
      name,
      outline,
      twin,
      massG,
      freeMm,
      beam: beamIn(one),
      solidHz: one.solidHz ?? null,
    }
    return armShake(arm, flight, tipG, auwG) ?? []
  })
}

function beamIn({ part, material, sections }: ReportPart): ArmBeam | null {
  if (sections?.kind !== 'sections') return null
  const zonePcts = part.zones.map(({ infillPct }) => infillPct)
  const rooms = (sections.slices[0]?.parts.length ?? 2) - 1
  const laid = laidOf({ ...part.recipe, zonePcts }, material, rooms)
  return { sections, laid, doubt: toneDoubt(material) }
}
