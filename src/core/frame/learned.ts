import { rangeOf } from '../doubt/bell.ts'
import { clockDoubt, layingErrors, spoolErrors } from '../doubt/factors.ts'
import { formOf } from '../doubt/form.ts'
import type { Lesson } from '../doubt/lessons.ts'
import type { SharedError } from '../model/doubt.ts'
import type { Printer, Range } from '../model/figures.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { isFileTime } from './frameReadings.ts'
import { materialIdsOf } from './lessonsOf.ts'

/** What weighings taught of a spool on a printer. */
export interface Learned {
  /** Id of the material. */
  readonly spool: string
  /** Id of the printer. */
  readonly printer: string
  /** Grams of a solid print ÷ calculated: above 1 it prints heavier than calculated. */
  readonly factor: Range
  /**
   * How many weighings taught it, those of earlier frames with them: of one piece, of a set, of all
   * printed parts or of the whole aircraft, each once.
   */
  readonly from: number
}

/** What the clock taught of a printer. */
export interface LearnedHours {
  readonly printer: string
  /** Hours of a print of long lines ÷ calculated: above 1 it takes longer than calculated. */
  readonly factor: Range
  /** How many timed prints taught it, those of earlier frames with them. */
  readonly from: number
}

/** What is known by now of each spool of the frame that something was weighed of. */
export function learnedOf(
  { parts, readings, known }: FrameDoubt,
  printerId: string,
  lessons: readonly Lesson[] = [],
): readonly Learned[] {
  const heard = new Set(known.heard.map(({ id }) => id))
  const taught = [
    ...readings.map((one) => ({ id: one.id, materialIds: materialIdsOf(one, parts) })),
    ...lessons.filter((one) => one.of === 'mass' && one.printerId === printerId),
  ].filter(({ id }) => heard.has(id))
  const materials = new Map(parts.map(({ material }) => [material.id, material]))
  return [...materials.values()].flatMap((material): Learned[] => {
    const from = taught.filter(({ materialIds }) => materialIds.includes(material.id)).length
    if (from === 0) return []
    const errors = [...spoolErrors(material), ...layingErrors(printerId, material, 1)]
    return [{ spool: material.id, printer: printerId, factor: factorOf(errors, known), from }]
  })
}

/** What is known by now of the printer's hours; null while no print was timed. */
export function learnedHours(
  { readings, known }: FrameDoubt,
  printer: Pick<Printer, 'id' | 'clockFactor'>,
  lessons: readonly Lesson[] = [],
): LearnedHours | null {
  const { shared } = clockDoubt(printer, 0)
  // Of runs on several printers those that say something of this one.
  const ofIt = known.heard.filter(({ form }) => shared.some(({ id }) => form.ids.includes(id)))
  const heard = new Set(ofIt.map(({ id }) => id))
  const timed = [
    ...readings.filter(({ of }) => of.kind === 'run'),
    ...lessons.filter((one) => one.of === 'time' && one.printerId === printer.id),
  ].filter(({ id }) => heard.has(id) && !isFileTime(id))
  if (timed.length === 0) return null
  return { printer: printer.id, factor: factorOf(shared, known), from: timed.length }
}

/** A figure calculated as 1 that these errors alone change. */
function factorOf(errors: readonly SharedError[], known: FrameDoubt['known']): Range {
  return rangeOf(
    known.bell(
      formOf(
        1,
        errors.map(({ id, effect }) => [id, effect] as const),
      ),
    ),
  )
}
