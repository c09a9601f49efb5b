import type { ClockTime, LaidReading, WholeWeighing } from '../model/readings.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { readingId } from './frameDoubt.ts'
import { fileTimeId } from './frameReadings.ts'
import type { FramePart, ReadingFate, ToldReading } from './types.ts'

/** What was read in a frame, before anything is made of it. */
export interface FrameReadings {
  readonly parts: readonly FramePart[]
  readonly wholes: readonly WholeWeighing[]
  readonly clocks: readonly ClockTime[]
  readonly laid: readonly LaidReading[]
}

/**
 * Every reading of the frame, of scale and clock, and what came of it. `atOdds` says that a part
 * weighs what nothing explains, so that no weighing of the whole was listened to.
 */
export function readingsTold(
  { parts, wholes, clocks, laid }: FrameReadings,
  { parts: doubted, known, readings }: Pick<FrameDoubt, 'parts' | 'known' | 'readings'>,
  atOdds: boolean,
): readonly ToldReading[] {
  const heard = new Set(known.heard.map(({ id }) => id))
  const strays = new Set(known.strays.map(({ id }) => id))
  const counted = new Set(readings.map(({ id }) => id))
  const waiting = new Set(
    parts.filter(({ figures }) => figures === null).map(({ part }) => part.id),
  )
  const byScale = new Set(doubted.flatMap((part) => (part.byScale === true ? [part.id] : [])))
  const named = new Map(parts.map(({ part }) => [part.id, part.name]))
  const fateOf = (id: string, else_: ReadingFate): ReadingFate => {
    if (strays.has(id)) return 'set aside'
    if (heard.has(id)) return 'heard'
    return counted.has(id) ? 'set aside' : else_
  }
  return [
    ...parts.flatMap(({ part: { id, name, weighIn }, figures }): ToldReading[] => {
      if (weighIn === undefined) return []
      const { massG, pieces = 1, calculatedG } = weighIn
      const against = calculatedG ?? figures?.massG.mid ?? null
      const ratio = against !== null && against > 0 ? massG / against : null
      let otherwise: ReadingFate = 'not comparable'
      if (figures === null) otherwise = byScale.has(id) ? 'alone' : 'waits'
      const fate = fateOf(readingId(id), otherwise)
      return [{ id, kind: 'pieces', name, pieces, value: massG * pieces, ratio, fate }]
    }),
    ...wholes.map(({ id, of, scaleG, tareG, calculatedG }): ToldReading => {
      const value = scaleG - tareG
      const ratio = calculatedG > 0 ? value / calculatedG : null
      const fate = fateOf(id, atOdds ? 'part at odds' : 'waits')
      const name = of === 'printed' ? 'all printed parts' : 'the whole aircraft'
      return { id, kind: of, name, pieces: null, value, ratio, fate }
    }),
    ...clocks.map(({ id, pieces, timeS, calculatedS }): ToldReading => {
      const ids = Object.keys(pieces)
      const isGone = ids.some((partId) => !named.has(partId))
      const words = ids.map((partId) => countedName(pieces[partId] ?? 0, named.get(partId)))
      const ratio = calculatedS > 0 ? timeS / calculatedS : null
      const waits = ids.some((partId) => waiting.has(partId)) && !isGone
      const fate = fateOf(id, waits ? 'waits' : 'part gone')
      const all = Object.values(pieces).reduce((sum, count) => sum + count, 0)
      return { id, kind: 'clock', name: words.join(', '), pieces: all, value: timeS, ratio, fate }
    }),
    ...laid.flatMap((one): ToldReading[] => {
      const { id, partId, fileName, depositMm3, calculatedMm3, timeS, calculatedS } = one
      const part = named.get(partId)
      const otherwise = part !== undefined && waiting.has(partId) ? 'waits' : 'part gone'
      const common = { name: `${fileName}, ${part ?? 'a part that is gone'}`, pieces: 1 }
      const share = (value: number, of: number) => (of > 0 ? value / of : null)
      const timeId = fileTimeId(id)
      return [
        {
          ...common,
          id,
          kind: 'file',
          value: depositMm3,
          ratio: share(depositMm3, calculatedMm3),
          fate: fateOf(id, otherwise),
        },
        {
          ...common,
          id: timeId,
          kind: 'file time',
          value: timeS,
          ratio: share(timeS, calculatedS),
          fate: fateOf(timeId, otherwise),
        },
      ]
    }),
  ]
}

function countedName(count: number, name = 'a part that is gone'): string {
  return count > 1 ? `${count} × ${name}` : name
}
