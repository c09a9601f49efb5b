import { offerJoints, type MeetingPart } from '../core/joints/offerJoints.ts'
import type { LengthUnit, Mesh } from '../core/model/mesh.ts'
import { unitToMm } from '../core/model/units.ts'
import { takingOf, type MeshShelf } from './meshShelf.ts'
import type { MeshSource, OffersAnswer, OffersAsk } from './protocol.ts'

/** Looks for joints among the parts of a frame; a part whose mesh cannot be read is told and left out. */
export async function offersOf({ parts }: OffersAsk, shelf: MeshShelf): Promise<OffersAnswer> {
  const left: string[] = []
  const meeting: MeetingPart[] = []
  const kept = new Map<string, Mesh>()
  for (const { partId, source, unit, pieces } of parts) {
    try {
      // Rows of one file share what is found on it.
      const key = `${source.hash} ${unit} ${source.keepsHairs === true}`
      const mesh = kept.get(key) ?? (await meshOf(source, unit, shelf))
      kept.set(key, mesh)
      meeting.push({ partId, mesh, pieces })
    } catch {
      left.push(partId)
    }
  }
  return { offers: offerJoints(meeting), left }
}

/** In mm and faced outwards, in the axes it was drawn in. */
async function meshOf(source: MeshSource, unit: LengthUnit, shelf: MeshShelf): Promise<Mesh> {
  const { positions, indices } = shelf.outward(await shelf.read(source), takingOf(source, unit))
  const mm = unitToMm(unit)
  return {
    positions: mm === 1 ? positions : Float64Array.from(positions, (value) => value * mm),
    indices,
  }
}
