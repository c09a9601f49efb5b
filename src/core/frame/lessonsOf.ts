import { clocksIn } from '../doubt/factors.ts'
import { effectOf } from '../doubt/form.ts'
import type { Lesson } from '../doubt/lessons.ts'
import { ownerOf } from '../doubt/lines.ts'
import type { Reading } from '../doubt/readings.ts'
import { isUnlisted } from '../doubt/readings.ts'
import type { DoubtedPart, FrameDoubt } from './frameDoubt.ts'
import { partIdOf } from './frameDoubt.ts'

/**
 * What the readings of a frame teach later ones: of each believed one, of scale or clock, how far
 * it was off, with the errors that what was read shares with other prints. What belonged to its
 * lines alone is noise there. Ids hold the frame's, so that a frame never hears its own lessons
 * again.
 */
export function lessonsOf(
  { parts, readings, known, names }: FrameDoubt,
  frameId: string,
  printerId: string,
): readonly Lesson[] {
  const heard = new Map(known.heard.map((one) => [one.id, one]))
  return readings.flatMap((reading): Lesson[] => {
    const { form, value, noise } = heard.get(reading.id) ?? {}
    if (form === undefined || value === undefined || noise === undefined) return []
    if (!(form.mid > 0) || !(value > 0)) return []
    const shared: Lesson['shared'][number][] = []
    const alone = [noise / form.mid]
    for (const id of form.ids) {
      const share = effectOf(form, id) / form.mid
      if (ownerOf(id) !== null || isUnlisted(id)) alone.push(share)
      else shared.push({ id, name: names.get(id) ?? id, effect: share })
    }
    return [
      {
        id: `${frameId}/${partIdOf(reading.id)}`,
        of: reading.of.kind === 'run' ? 'time' : 'mass',
        materialIds: materialIdsOf(reading, parts),
        printerId: timedOn(shared, printerId),
        shared,
        ratio: value / form.mid,
        noise: Math.hypot(...alone),
      },
    ]
  })
}

/**
 * The printer that a time was taken on: the frame's own, unless the clock was that of another
 * alone.
 */
function timedOn(shared: readonly { readonly id: string }[], own: string): string {
  const clocks = clocksIn(shared.map(({ id }) => id))
  return clocks.includes(own) ? own : (clocks[0] ?? own)
}

/**
 * Of lessons those of other frames: a frame hears its own readings themselves. A frame may be there
 * twice, opened from its file or made again beside itself; what was read once teaches once, so an
 * equal lesson of a copy is left out.
 */
export function carriedLessons(lessons: readonly Lesson[], frameId: string): readonly Lesson[] {
  const isOwn = ({ id }: Lesson): boolean => id.startsWith(`${frameId}/`)
  const heard = new Set(lessons.filter(isOwn).map(contentOf))
  return lessons.filter((one) => {
    const content = contentOf(one)
    if (isOwn(one) || heard.has(content)) return false
    heard.add(content)
    return true
  })
}

/** What a lesson says, whoever says it. */
function contentOf({ of, materialIds, printerId, ratio, noise }: Lesson): string {
  return JSON.stringify([of, materialIds, printerId, ratio.toPrecision(9), noise.toPrecision(9)])
}

/** Spools of what lay on the scale; none for a time. */
export function materialIdsOf({ of }: Reading, parts: readonly DoubtedPart[]): readonly string[] {
  if (of.kind === 'run' || of.kind === 'laid') return []
  const lineIds = new Set(of.kind === 'pieces' ? [of.lineId] : of.lineIds)
  const weighed = parts.filter(
    ({ id, quantity }) => lineIds.has(id) && (of.kind === 'pieces' || quantity > 0),
  )
  return [...new Set(weighed.map(({ material }) => material.id))]
}
