import type { Bell, Belief, Foretold, Observation } from './belief.ts'
import { believe } from './belief.ts'
import type { Form } from './form.ts'
import { onClockOf } from './factors.ts'
import { covarianceOf, EXACT_ZERO, formOf, sumForms } from './form.ts'
import type { Lesson } from './lessons.ts'
import { lessonObservation } from './lessons.ts'
import type { DoubtLine, LineForms, ObservedPieces } from './lines.ts'
import { lineForms, ownId } from './lines.ts'
import type { Reading } from './readings.ts'
import { observationOf, unlistedId } from './readings.ts'
import { findStrays } from './strays.ts'

/** A list of lines as it is known once its readings were heard. */
export interface Understanding {
  readonly belief: Belief
  /** All flying pieces of a line. Nothing for an unknown id. */
  readonly line: (id: string) => Form
  /** So many pieces of a line that do not fly. */
  readonly spare: (id: string, pieces: number) => Form
  /** A flying piece of a line that no reading was taken of; null where there is none. */
  readonly next: (id: string) => Form | null
  /** The flying pieces of these lines together. */
  readonly sum: (ids: Iterable<string>) => Form
  readonly bell: (form: Form) => Bell
  /** Readings too far off to be believed, the furthest first; they taught nothing. */
  readonly strays: readonly Foretold[]
  /** Readings and lessons that did teach. */
  readonly heard: readonly Observation[]
}

/**
 * Hears every reading of these lines, and what earlier frames taught. Readings far outside what
 * all the others foretell are set aside: one of a single line still tells of that line, whose
 * error may then be of any size; one of many lines tells of nothing.
 */
export function understand(
  lines: readonly DoubtLine[],
  readings: readonly Reading[],
  lessons: readonly Lesson[] = [],
): Understanding {
  const taught = lessons.map(lessonObservation)
  const usual = formsOf(lines, readings, new Set())
  const trusted = new Set(readings.filter((one) => one.trusted).map(({ id }) => id))
  const strays = findStrays([...readings.flatMap((one) => observe(one, usual)), ...taught], trusted)
  const strayIds = new Set(strays.map(({ id }) => id))
  const isStray = ({ id }: { readonly id: string }): boolean => strayIds.has(id)
  const forms = strays.length === 0 ? usual : formsOf(lines, readings, strayIds)
  const heard = [
    ...readings
      .filter((one) => one.of.kind === 'pieces' || !isStray(one))
      .flatMap((one) => observe(one, forms)),
    ...taught.filter((one) => !isStray(one)),
  ]
  const belief = believe(heard)
  const line = (id: string): Form => forms.get(id)?.flying ?? EXACT_ZERO
  return {
    belief,
    line,
    spare: (id, pieces) => forms.get(id)?.spare(pieces) ?? EXACT_ZERO,
    next: (id) => forms.get(id)?.next() ?? null,
    sum: (ids) => sumForms([...ids].map((id) => [line(id), 1] as const)),
    bell: belief.of,
    strays,
    heard: heard.filter((one) => !isStray(one)),
  }
}

type Forms = ReadonlyMap<string, LineForms>

function formsOf(
  lines: readonly DoubtLine[],
  readings: readonly Reading[],
  strayIds: ReadonlySet<string>,
): Forms {
  const groups = new Map<string, ObservedPieces[]>()
  const mishaps = new Set<string>()
  for (const { id, of } of readings) {
    if (of.kind !== 'pieces') continue
    const group = { observationId: id, pieces: of.pieces }
    groups.set(of.lineId, [...(groups.get(of.lineId) ?? []), group])
    if (strayIds.has(id)) mishaps.add(of.lineId)
  }
  return new Map(
    lines.map((line) => [
      line.id,
      lineForms(line, groups.get(line.id) ?? [], mishaps.has(line.id)),
    ]),
  )
}

/** Nothing where what was read is no longer in the list, or is no number a scale could show. */
function observe(reading: Reading, forms: Forms): readonly Observation[] {
  return observationsOf(reading, forms).filter(
    ({ form, value, noise }) =>
      noise > 0 && Number.isFinite(value + form.mid + covarianceOf(form, form) + noise ** 2),
  )
}

function observationsOf(reading: Reading, forms: Forms): readonly Observation[] {
  const { id, of } = reading
  if (of.kind === 'pieces') {
    const form = forms.get(of.lineId)?.observed.get(id)
    return form === undefined ? [] : [observationOf(reading, form)]
  }
  if (of.kind === 'laid') {
    if (!forms.has(of.lineId)) return []
    const shared = of.shared.map((error) => [error.id, error.effect] as const)
    return [observationOf(reading, formOf(1, [...shared, [ownId(of.lineId), of.own]]))]
  }
  if (of.kind === 'run') {
    const run = of.pieces.flatMap(({ lineId, pieces }) => forms.get(lineId)?.spare(pieces) ?? [])
    if (run.length < of.pieces.length) return []
    const sum = sumForms(run.map((form) => [form, 1] as const))
    return [observationOf(reading, of.printerId === undefined ? sum : onClockOf(sum, of.printerId))]
  }
  const known = of.lineIds.flatMap((lineId) => forms.get(lineId)?.flying ?? [])
  if (known.length < of.lineIds.length) return []
  const sum = sumForms(known.map((form) => [form, 1] as const))
  const unlisted = formOf(0, [[unlistedId(id), of.unlisted * sum.mid]])
  return [
    observationOf(
      reading,
      sumForms([
        [sum, 1],
        [unlisted, 1],
      ]),
    ),
  ]
}
