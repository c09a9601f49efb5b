import { itemPieces } from '../../joints/itemPieces.ts'
import { nameOf, type NamedPieces } from '../report/pieceWords.ts'
import { frameHardware } from '../hardware/jointItems.ts'
import { catalogueEntry } from '../hardware/catalogue.ts'
import type { Aircraft } from '../../model/aircraft.ts'
import { assemblySteps, type AssemblyStep, type BoxedPart, type Piece } from './assemblySteps.ts'

/**
 * The order of assembly as numbered sentences would have it, without numbers: inserts first, since
 * they want heat; then piece onto piece with what holds it. Empty without joints. Metric and in
 * English numbers, see `toldWords`.
 */
export function assemblyWords(boxed: readonly BoxedPart[], aircraft: Aircraft): readonly string[] {
  const parts = boxed.map(({ part }) => part)
  const steps = assemblySteps(boxed, aircraft)
  if (steps.length === 0) return []
  const named = [...parts, ...itemPieces(aircraft.items)]
  const hardware = new Map(frameHardware({ parts, aircraft }).map((each) => [each.joint.id, each]))
  const bought = (step: AssemblyStep, kinds: readonly string[]): string => {
    const counts = new Map<string, number>()
    for (const { id } of step.joints) {
      for (const { choice, sites } of hardware.get(id)?.bought ?? []) {
        if (!kinds.includes(choice.kind)) continue
        const name = briefly(catalogueEntry(choice).name)
        counts.set(name, (counts.get(name) ?? 0) + sites.length)
      }
    }
    return [...counts].map(([name, count]) => `${count} × ${name}`).join(', ')
  }
  return [
    ...insertWords(boxed, named, aircraft),
    ...steps.map((step): string => {
      const names = piecesWords(step.pieces, named)
      if (step.onto.length === 0) return `Start with ${names}.`
      const held = bought(step, ['screw', 'nut', 'washer', 'standoff'])
      const onto = piecesWords(step.onto, named)
      const covered = step.covers.length === 0 ? '' : coverWords(step, named)
      return `${names} onto ${onto}${held === '' ? '' : `: ${held}`}.${covered}`
    }),
  ]
}

function insertWords(
  boxed: readonly BoxedPart[],
  named: readonly NamedPieces[],
  aircraft: Aircraft,
): readonly string[] {
  const parts = boxed.map(({ part }) => part)
  const seats = new Map<string, { name: string; count: number; into: Set<string> }>()
  for (const { bought } of frameHardware({ parts, aircraft })) {
    for (const { choice, sites } of bought) {
      if (choice.kind !== 'insert') continue
      const { name } = catalogueEntry(choice)
      const seat = seats.get(name) ?? { name: briefly(name), count: 0, into: new Set<string>() }
      seats.set(name, seat)
      seat.count += sites.length
      for (const { at } of sites) seat.into.add(nameOf(at, named))
    }
  }
  return [...seats.values()].map(
    ({ name, count, into }) =>
      `Set ${count} × ${name} into ${[...into].join(', ')}, with heat: mind the fumes and the hot tip.`,
  )
}

function coverWords({ covers }: AssemblyStep, parts: readonly NamedPieces[]): string {
  const pieces = covers.map(({ b }) => b)
  return ` First the screws of ${piecesWords(pieces, parts)}, which are out of reach after it.`
}

/** `2 × Front arm`, `Damper cup 3`: all pieces of a part, or those of them. */
function piecesWords(pieces: readonly Piece[], parts: readonly NamedPieces[]): string {
  const numbers = new Map<string, Set<number>>()
  for (const { partId, piece } of pieces) {
    numbers.set(partId, (numbers.get(partId) ?? new Set()).add(piece + 1))
  }
  return [...numbers]
    .map(([partId, own]) => {
      const { name = 'a part', quantity = 1 } = parts.find(({ id }) => id === partId) ?? {}
      if (quantity === 1) return name
      return own.size === quantity ? `${quantity} × ${name}` : `${name} ${[...own].join(', ')}`
    })
    .join(' and ')
}

/** Without what all of a kind share. */
function briefly(name: string): string {
  return name.replace(/, socket head, steel \(ISO 4762\)$|, steel \(ISO \d+\)$|, brass$/, '')
}
