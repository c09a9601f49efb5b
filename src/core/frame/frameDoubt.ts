import type { Bell } from '../doubt/belief.ts'
import type { Form } from '../doubt/form.ts'
import { sumForms } from '../doubt/form.ts'
import type { Lesson } from '../doubt/lessons.ts'
import type { DoubtLine } from '../doubt/lines.ts'
import type { Reading } from '../doubt/readings.ts'
import type { Understanding } from '../doubt/understand.ts'
import { understand } from '../doubt/understand.ts'
import type { Item } from '../model/aircraft.ts'
import type { Material, PartFigures } from '../model/figures.ts'
import { itemLine } from './itemLine.ts'

/** A printed part as the model of doubt needs it. */
export interface DoubtedPart {
  readonly id: string
  readonly name: string
  readonly quantity: number
  readonly spares: number
  readonly material: Material
  /** Of one piece, as calculated. */
  readonly figures: Pick<PartFigures, 'massG' | 'cost' | 'timeS' | 'filamentM' | 'doubt'>
  /** What a scale said of some pieces of it; null where it was never weighed. */
  readonly weighed: WeighedPieces | null
}

export interface WeighedPieces {
  /** Of one piece, as it counts now. */
  readonly eachG: number
  readonly pieces: number
  /** One standard deviation of `eachG` from the scale and from what changed since. */
  readonly noiseG: number
  readonly trusted: boolean
}

export type FrameFigure = 'mass' | 'cost' | 'time' | 'filament'
export type PieceKind = 'flying' | 'spares'

/** A frame's figures with what is known of their errors. */
export interface FrameDoubt {
  readonly parts: readonly DoubtedPart[]
  readonly items: readonly Item[]
  readonly known: Understanding
  /** A figure of all flying pieces, or of those in the bag, of these lines together. */
  readonly bell: (figure: FrameFigure, pieces: PieceKind, ids: readonly string[]) => Bell
  /** The same of all lines that fly, in grams, with every error they carry. */
  readonly allUp: Form
  readonly allUpBell: Bell
  /** Names of lines and shared errors, by id. */
  readonly names: ReadonlyMap<string, string>
}

/** How far printed pieces of one part differ, one deviation (common practice, no source). */
export const SCATTER = 0.005

/**
 * The model of errors of one frame: made once from all that is in doubt, it gives every mass, cost
 * and time of it. Of a weighed part the model would believe all but a hundredth of what it was
 * off by; there the scale stands, so that a part weighs what the scale said.
 */
export function frameDoubt(
  parts: readonly DoubtedPart[],
  items: readonly Item[],
  readings: readonly Reading[] = [],
  lessons: readonly Lesson[] = [],
): FrameDoubt {
  const lines = [...parts.flatMap(partLines), ...items.map(itemLine)]
  const known = understand(lines, [...parts.flatMap(readingOf), ...readings], lessons)
  const byId = new Map(parts.map((part) => [part.id, part]))
  const bell: FrameDoubt['bell'] = (figure, pieces, ids) => {
    const forms: Form[] = []
    let standsG = 0
    for (const id of ids) {
      const part = byId.get(id)
      const lineId = lineIdOf(figure, id)
      const count = (pieces === 'flying' ? part?.quantity : part?.spares) ?? 0
      const form = pieces === 'flying' ? known.line(lineId) : known.spare(lineId, count)
      const eachG = figure === 'mass' ? part?.weighed?.eachG : undefined
      if (eachG !== undefined) standsG += eachG * count - known.bell(form).mean
      forms.push(form)
    }
    const { mean, sigma } = known.bell(sumForms(forms.map((form) => [form, 1] as const)))
    return { mean: mean + standsG, sigma }
  }
  const allIds = [...parts, ...items].map(({ id }) => id)
  return {
    parts,
    items,
    known,
    bell,
    allUp: known.sum(allIds),
    allUpBell: bell('mass', 'flying', allIds),
    names: namesOf(lines),
  }
}

/** What a part's line is called: its masses by its own id, so that readings and blame name the part. */
export function lineIdOf(figure: FrameFigure, partId: string): string {
  return figure === 'mass' ? partId : `${figure}:${partId}`
}

function partLines({ id, name, quantity, figures }: DoubtedPart): readonly DoubtLine[] {
  const { massG, cost, timeS, filamentM, doubt } = figures
  const line = (figure: FrameFigure, each: number): DoubtLine => ({
    id: lineIdOf(figure, id),
    name,
    quantity,
    each,
    doubt: doubt[figure],
    scatter: figure === 'mass' ? SCATTER : 0,
  })
  return [
    line('mass', massG.mid),
    line('cost', cost.mid),
    line('time', timeS.mid),
    line('filament', filamentM.mid),
  ]
}

function readingOf({ id, weighed }: DoubtedPart): readonly Reading[] {
  if (weighed === null) return []
  const { eachG, pieces, noiseG, trusted } = weighed
  const of = { kind: 'pieces', lineId: id, pieces } as const
  return [{ id: readingId(id), value: eachG * pieces, noise: noiseG * pieces, of, trusted }]
}

/** What the weighing of a part's pieces is called among the readings. */
export function readingId(partId: string): string {
  return `weighed:${partId}`
}

function namesOf(lines: readonly DoubtLine[]): ReadonlyMap<string, string> {
  return new Map(
    lines.flatMap(({ id, name, doubt }) => [
      [id, name] as const,
      ...doubt.shared.map((error) => [error.id, error.name] as const),
    ]),
  )
}
