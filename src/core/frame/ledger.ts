import type { Aircraft, ItemGroup, MassBasis, MassStatus } from '../model/aircraft.ts'
import type { Material, PartFigures } from '../model/figures.ts'
import { growthPct } from '../data/growth.ts'

/** One printed part of the frame with its figures. Parts without figures are left out by the caller, who says so. */
export interface PrintedPart {
  readonly id: string
  readonly name: string
  /** Pieces that fly; spares stay in the bag. */
  readonly quantity: number
  readonly material: Material
  /** Of one piece. */
  readonly figures: PartFigures
}

export type LedgerGroup = 'printed' | ItemGroup

export interface LedgerLine {
  /** Of the part or item. */
  readonly id: string
  readonly name: string
  readonly group: LedgerGroup
  readonly status: MassStatus
  readonly quantity: number
  /** Of one piece. */
  readonly massG: number
  readonly massTotalG: number
  /** Of one piece, in the prices' currency. */
  readonly costEach: number
  readonly basis: MassBasis | 'weighed'
}

export interface GroupShare {
  readonly group: LedgerGroup
  readonly massG: number
  /** Of the basic mass, 0–1; 0 when that is 0. */
  readonly massShare: number
  readonly cost: number
}

/** Terms as in AIAA S-120A-2015. */
export interface AircraftLedger {
  readonly lines: readonly LedgerLine[]
  /** Sum of the lines, nothing added. */
  readonly basicMassG: number
  /** Added for what is not known yet, by each line's status. */
  readonly growthG: number
  /** Basic mass + growth. */
  readonly predictedMassG: number
  readonly limitG: number | null
  /** Limit − predicted mass: below zero the aircraft is over. Null without a limit. */
  readonly marginG: number | null
  /** Of the flying pieces. */
  readonly cost: number
  /** Groups that have lines, the heaviest first. */
  readonly groups: readonly GroupShare[]
}

/** Adds printed parts and bought items into one aircraft. A weighed mass replaces the calculated one. */
export function aircraftLedger(
  parts: readonly PrintedPart[],
  aircraft: Pick<Aircraft, 'items' | 'weighedG' | 'growth' | 'limitG'>,
): AircraftLedger {
  const { items, weighedG, growth, limitG } = aircraft
  const lines = [
    ...parts.map((part) => partLine(part, weighedMassG(weighedG, part.id))),
    ...items.map((item): LedgerLine => {
      const { id, name, group, status, quantity, massG, costEach, basis } = item
      const massTotalG = massG * quantity
      return { id, name, group, status, quantity, massG, massTotalG, costEach, basis }
    }),
  ]
  const basicMassG = sum(lines, (line) => line.massTotalG)
  const growthG = sum(lines, (line) => (line.massTotalG * growthPct(growth, line.status)) / 100)
  const predictedMassG = basicMassG + growthG
  return {
    lines,
    basicMassG,
    growthG,
    predictedMassG,
    limitG,
    marginG: limitG === null ? null : limitG - predictedMassG,
    cost: sum(lines, costOfLine),
    groups: groupShares(lines, basicMassG),
  }
}

/** What the scale said of one piece, g; null when it was never weighed or the entry makes no sense. */
export function weighedMassG(weighedG: Aircraft['weighedG'], partId: string): number | null {
  const found = weighedG[partId]
  return found !== undefined && Number.isFinite(found) && found > 0 ? found : null
}

function partLine(part: PrintedPart, weighedG: number | null): LedgerLine {
  const { id, name, quantity, figures } = part
  const massG = weighedG ?? figures.massG.mid
  return {
    id,
    name,
    group: 'printed',
    status: weighedG === null ? 'calculated' : 'weighed',
    quantity,
    massG,
    massTotalG: massG * quantity,
    costEach: figures.cost.mid,
    basis: weighedG === null ? 'computed' : 'weighed',
  }
}

function groupShares(lines: readonly LedgerLine[], basicMassG: number): readonly GroupShare[] {
  const groups = [...new Set(lines.map((line) => line.group))]
  return groups
    .map((group) => {
      const own = lines.filter((line) => line.group === group)
      const massG = sum(own, (line) => line.massTotalG)
      const massShare = basicMassG > 0 ? massG / basicMassG : 0
      return { group, massG, massShare, cost: sum(own, costOfLine) }
    })
    .toSorted((a, b) => b.massG - a.massG)
}

const costOfLine = (line: LedgerLine): number => line.costEach * line.quantity

function sum(lines: readonly LedgerLine[], pick: (line: LedgerLine) => number): number {
  return lines.reduce((total, line) => total + pick(line), 0)
}
