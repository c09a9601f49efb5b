import type { DrillPart, WalledHole } from '../../src/core/drill/types.ts'
import type { Part } from '../../src/core/model/frame.ts'
import { printedPart } from './ledgerParts.ts'

/** A hole of 3.2 mm upright through 4 mm, unless told otherwise. */
export function holeAt(more: Partial<WalledHole> = {}): WalledHole {
  const diameterMm = more.diameterMm ?? 3.2
  return {
    shape: 'round',
    axis: [0, 0, 1],
    centreMm: [0, 0, 2],
    diameterMm,
    clearMm: diameterMm,
    stretchMm: 0,
    along: [0, 0, 0],
    depthMm: 4,
    openLow: true,
    openHigh: true,
    seats: [],
    webMm: null,
    wallMm: 5,
    ...more,
  }
}

export function drillPart(
  id: string,
  holes: readonly WalledHole[],
  more: Partial<Part> = {},
): DrillPart {
  const { part, material } = printedPart(id, 10, 1, more)
  return { part, material, found: { partId: part.id, holes, necks: [] } }
}
