import type { Material } from '../model/figures.ts'
import type { Spot } from '../model/runs.ts'
import type { PlannedRun } from './planBeds.ts'
import { printerOf, type Printers } from './runPrinters.ts'

/** What decides which runs a part may be in. */
export interface HandPart {
  readonly id: string
  readonly material: Pick<Material, 'id'>
  readonly layerMm: number
}

/** A run as it lies, whatever it takes. */
export type LaidRun = Pick<PlannedRun, 'printerId' | 'materialId' | 'layerMm' | 'spots'>

/** Runs as somebody placed their pieces; pieces of parts that are gone are left out. */
export function handRuns(
  byHand: readonly (readonly Spot[])[],
  parts: readonly HandPart[],
  printers: Printers,
): readonly LaidRun[] {
  const byId = new Map(parts.map((part) => [part.id, part]))
  return byHand.flatMap((spots) => {
    const known = spots.every(({ partId }) => byId.has(partId))
      ? spots
      : spots.filter(({ partId }) => byId.has(partId))
    const first = byId.get(known[0]?.partId ?? '')
    if (first === undefined) return []
    const { id: printerId } = printerOf(printers, known[0]?.printerId)
    return [{ printerId, materialId: first.material.id, layerMm: first.layerMm, spots: known }]
  })
}

/** How many pieces of each part somebody has not placed. */
export function restOf<T extends { id: string; count: number; mirrored?: number }>(
  parts: readonly T[],
  byHand: readonly (readonly Spot[])[],
): readonly T[] {
  if (byHand.length === 0) return parts
  const placed = byHand.flat()
  return parts.map((part) => {
    const own = placed.filter(({ partId }) => partId === part.id)
    const count = Math.max(0, part.count - own.length)
    const mirrors = own.filter(({ mirrored }) => mirrored === true).length
    const mirrored = Math.min(count, Math.max(0, (part.mirrored ?? 0) - mirrors))
    return { ...part, count, ...(part.mirrored === undefined ? {} : { mirrored }) }
  })
}
