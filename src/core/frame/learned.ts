import { rangeOf } from '../doubt/bell.ts'
import { layingErrors, spoolErrors } from '../doubt/factors.ts'
import { formOf } from '../doubt/form.ts'
import type { Lesson } from '../doubt/lessons.ts'
import type { Range } from '../model/figures.ts'
import type { FrameDoubt } from './frameDoubt.ts'
import { readingId } from './frameDoubt.ts'

/** What weighings taught of a spool on a printer. */
export interface Learned {
  /** Id of the material. */
  readonly spool: string
  /** Id of the printer. */
  readonly printer: string
  /** Grams of a solid print ÷ calculated: above 1 it prints heavier than calculated. */
  readonly factor: Range
  /** How many weighings taught it, those of earlier frames with it. */
  readonly from: number
}

/** What is known by now of each spool of the frame that something was weighed of. */
export function learnedOf(
  { parts, known }: FrameDoubt,
  printerId: string,
  lessons: readonly Lesson[] = [],
): readonly Learned[] {
  const heard = new Set(known.heard.map(({ id }) => id))
  const materials = new Map(parts.map(({ material }) => [material.id, material]))
  return [...materials.values()].flatMap((material): Learned[] => {
    const own = parts.filter((part) => part.material.id === material.id)
    const weighed = own.filter(({ id }) => heard.has(readingId(id))).length
    const carried = lessons.filter(
      (one) => one.materialId === material.id && one.printerId === printerId && heard.has(one.id),
    ).length
    if (weighed + carried === 0) return []
    const errors = [...spoolErrors(material), ...layingErrors(printerId, material, 1)]
    const form = formOf(
      1,
      errors.map(({ id, effect }) => [id, effect] as const),
    )
    const factor = rangeOf(known.bell(form))
    return [{ spool: material.id, printer: printerId, factor, from: weighed + carried }]
  })
}
