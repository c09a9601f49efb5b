import type { Bell } from '../doubt/belief.ts'
import { errorId } from '../doubt/errorId.ts'
import type { Form } from '../doubt/form.ts'
import { EXACT_ZERO, sumForms } from '../doubt/form.ts'
import type { Lesson } from '../doubt/lessons.ts'
import type { DoubtLine } from '../doubt/lines.ts'
import type { Reading } from '../doubt/readings.ts'
import type { Understanding } from '../doubt/understand.ts'
import { understand } from '../doubt/understand.ts'
import type { Item } from '../model/aircraft.ts'
import type { Material, PartFigures, Range } from '../model/figures.ts'
import { itemLine } from './itemLine.ts'

/** A printed part as the model of doubt needs it. */
export interface DoubtedPart {
  readonly id: string
  readonly name: string
  readonly quantity: number
  readonly spares: number
  readonly material: Material
  /** Of one piece, as calculated; hours and money as it is printed, beside others or not. */
  readonly figures: Pick<PartFigures, 'massG' | 'timeS' | 'filamentM' | 'doubt'> & {
    readonly cost: Range
  }
  /** Hours of one piece printed by itself, s. */
  readonly aloneS: number
  /** What a scale said of some pieces of it; null where it was never weighed. */
  readonly weighed: WeighedPieces | null
  /**
   * The scale alone says its mass: nothing was calculated, and its cost and times stand for
   * nothing.
   */
  readonly byScale?: true
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
/** `all` are both. */
export type PieceKind = 'flying' | 'spares' | 'all'

/** A frame's figures with what is known of their errors. */
export interface FrameDoubt {
  readonly parts: readonly DoubtedPart[]
  readonly items: readonly Item[]
  /** Everything read off scale and clock, as it counts now, heard or not. */
  readonly readings: readonly Reading[]
  readonly lessons: readonly Lesson[]
  readonly known: Understanding
  /** A figure of the flying pieces of these lines together, of those in the bag, or of both. */
  readonly bell: (figure: FrameFigure, pieces: PieceKind, ids: readonly string[]) => Bell
  /** A figure of all printed pieces together, spares with them, with every error it carries. */
  readonly all: (figure: FrameFigure) => Form
  /** Grams of one piece of a printed part: the mean of those that fly. */
  readonly piece: (id: string) => Bell
  /**
   * The items with the mass of one as it counts: what a weighing of the whole aircraft taught
   * included.
   */
  readonly countedItems: readonly Item[]
  /** The same of all lines that fly, in grams, with every error they carry. */
  readonly allUp: Form
  readonly allUpBell: Bell
  /** Names of lines and shared errors, by id. */
  readonly names: ReadonlyMap<string, string>
}

const WEIGHED = 'weighed:'
/** Two masses that differ by a smaller share are one. */
const SAME = 1e-9
/** How far printed pieces of one part differ, one deviation (common practice, no source). */
const SCATTER = 0.005

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
  const lines: DoubtLine[] = []
  for (const part of parts) pushLines(part, lines)
  for (const item of items) lines.push(itemLine(item))
  const allReadings = [...parts.flatMap(readingOf), ...readings]
  const known = understand(lines, allReadings, lessons)
  const byId = new Map(parts.map((part) => [part.id, part]))
  const bell: FrameDoubt['bell'] = (figure, pieces, ids) => {
    const forms: (readonly [Form, number])[] = []
    let standsG = 0
    for (const id of ids) {
      const part = byId.get(id)
      const lineId = lineIdOf(figure, id)
      const eachG = figure === 'mass' ? part?.weighed?.eachG : undefined
      const flying = pieces === 'spares' ? EXACT_ZERO : known.line(lineId)
      const spares = pieces === 'flying' ? 0 : (part?.spares ?? 0)
      const spare = spares > 0 ? known.spare(lineId, spares) : EXACT_ZERO
      if (eachG !== undefined) {
        const count = (pieces === 'spares' ? 0 : (part?.quantity ?? 0)) + spares
        standsG += eachG * count - known.bell(flying).mean - known.bell(spare).mean
      }
      if (flying !== EXACT_ZERO) forms.push([flying, 1])
      if (spare !== EXACT_ZERO) forms.push([spare, 1])
    }
    const one = known.bell(sumForms(forms))
    // What was weighed stands.
    return standsG === 0 ? one : { mean: one.mean + standsG, sigma: one.sigma }
  }
  const piece = (id: string): Bell => {
    const part = byId.get(id)
    const quantity = part?.quantity ?? 0
    if (quantity > 0) {
      const { mean, sigma, least = 0 } = bell('mass', 'flying', [id])
      return { mean: mean / quantity, sigma: sigma / quantity, least: least / quantity }
    }
    const one = known.bell(known.spare(id, 1))
    return { mean: part?.weighed?.eachG ?? one.mean, sigma: one.sigma }
  }
  const allIds = [...parts, ...items].map(({ id }) => id)
  // Nothing but a weighing that an item was in says more of it than its line.
  const read = new Set(allReadings.flatMap(({ of }) => (of.kind === 'whole' ? of.lineIds : [])))
  const countedItems = items.map((item): Item => {
    const { id, quantity, massG } = item
    if (quantity === 0 || !read.has(id)) return item
    const eachG = bell('mass', 'flying', [id]).mean / quantity
    return Math.abs(eachG - massG) > SAME * massG ? { ...item, massG: eachG } : item
  })
  // A slider that is dragged asks for neither.
  let names: ReadonlyMap<string, string> | null = null
  let allUp: Form | null = null
  return {
    parts,
    items,
    readings: allReadings,
    lessons,
    known,
    bell,
    piece,
    countedItems,
    all: (figure) =>
      sumForms(
        parts.flatMap(({ id, spares }) => {
          const lineId = lineIdOf(figure, id)
          return [
            [known.line(lineId), 1] as const,
            ...(spares > 0 ? [[known.spare(lineId, spares), 1] as const] : []),
          ]
        }),
      ),
    get allUp() {
      allUp ??= known.sum(allIds)
      return allUp
    },
    allUpBell: bell('mass', 'flying', allIds),
    get names() {
      names ??= namesOf(lines)
      return names
    },
  }
}

/**
 * What a part's line is called: its masses by its own id, so that readings and blame name the part.
 */
export function lineIdOf(figure: FrameFigure, partId: string): string {
  return figure === 'mass' ? partId : errorId(figure, partId)
}

const FIGURES: readonly FrameFigure[] = ['mass', 'cost', 'time', 'filament']

function pushLines({ id, name, quantity, figures }: DoubtedPart, lines: DoubtLine[]): void {
  const { massG, cost, timeS, filamentM, doubt } = figures
  const each = { mass: massG.mid, cost: cost.mid, time: timeS.mid, filament: filamentM.mid }
  for (const figure of FIGURES) {
    lines.push({
      id: lineIdOf(figure, id),
      name,
      quantity,
      each: each[figure],
      doubt: doubt[figure],
      scatter: figure === 'mass' ? SCATTER : 0,
    })
  }
}

function readingOf({ id, weighed }: DoubtedPart): readonly Reading[] {
  if (weighed === null) return []
  const { eachG, pieces, noiseG, trusted } = weighed
  const of = { kind: 'pieces', lineId: id, pieces } as const
  return [{ id: readingId(id), value: eachG * pieces, noise: noiseG * pieces, of, trusted }]
}

/** What the weighing of a part's pieces is called among the readings. */
export function readingId(partId: string): string {
  return `${WEIGHED}${partId}`
}

/** The part a reading is of by its name; other readings go by their own. */
export function partIdOf(id: string): string {
  return id.startsWith(WEIGHED) ? id.slice(WEIGHED.length) : id
}

function namesOf(lines: readonly DoubtLine[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>()
  for (const { id, name, doubt } of lines) {
    names.set(id, name)
    for (const error of doubt.shared) names.set(error.id, error.name)
  }
  return names
}
