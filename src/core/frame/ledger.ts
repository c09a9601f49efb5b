import type { Aircraft, ItemGroup, MassBasis, MassStatus } from '../model/aircraft.ts'
import { growthPct } from '../data/growth.ts'
import type { FrameRow } from './types.ts'

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
  /** Of one piece, in the prices' currency; 0 of a part that only the scale knows. */
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
  /** The share of mass and cost that is not printed. */
  readonly bought: { readonly massG: number; readonly cost: number }
  /** Groups that have lines, the heaviest first. */
  readonly groups: readonly GroupShare[]
}

/** What the ledger needs of a printed part. */
export type PrintedLine = Pick<FrameRow, 'part' | 'figures' | 'massFrom' | 'pieceG' | 'flying'>

/**
 * Adds printed parts and bought items into one aircraft, in the order given. A piece weighed before
 * it was changed is calculated again: only a piece as it was on the scale counts as weighed.
 */
export function aircraftLedger(
  parts: readonly PrintedLine[],
  { items, growth, limitG }: Pick<Aircraft, 'items' | 'growth' | 'limitG'>,
): AircraftLedger {
  const lines = [
    ...parts.map(partLine),
    ...items.map((item): LedgerLine => {
      const { id, name, group, status, quantity, massG, costEach, basis } = item
      const massTotalG = massG * quantity
      return { id, name, group, status, quantity, massG, massTotalG, costEach, basis }
    }),
  ]
  const basicMassG = sum(lines, (line) => line.massTotalG)
  const bought = lines.filter(({ group }) => group !== 'printed')
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
    bought: { massG: sum(bought, (line) => line.massTotalG), cost: sum(bought, costOfLine) },
    groups: groupShares(lines, basicMassG),
  }
}

function partLine({ part, figures, massFrom, pieceG, flying }: PrintedLine): LedgerLine {
  const { id, name, quantity } = part
  const isWeighed = massFrom === 'weighed'
  return {
    id,
    name,
    group: 'printed',
    status: isWeighed ? 'weighed' : 'calculated',
    quantity,
    massG: pieceG.mid,
    massTotalG: pieceG.mid * quantity,
    costEach: quantity > 0 ? flying.cost.mid / quantity : (figures?.cost.mid ?? 0),
    basis: isWeighed ? 'weighed' : 'computed',
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
