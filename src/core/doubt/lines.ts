import type { FigureDoubt } from '../model/doubt.ts'
import type { Form } from './form.ts'
import { formOf, sumForms } from './form.ts'

/** One line of a list of masses or times, as it is before anything was observed. */
export interface DoubtLine {
  readonly id: string
  readonly name: string
  /** Pieces that fly. */
  readonly quantity: number
  /** Of one piece, g or s. */
  readonly each: number
  readonly doubt: FigureDoubt
  /** One standard deviation of a single piece from its fellows, as a share. */
  readonly scatter: number
}

/** Pieces of one line that were observed together; the rest of the line was not. */
export interface ObservedPieces {
  readonly observationId: string
  readonly pieces: number
}

/** A line as quantities: all its flying pieces, and each group that was observed. */
export interface LineForms {
  readonly flying: Form
  readonly observed: ReadonlyMap<string, Form>
  /** So many pieces that do not fly and were not observed. */
  readonly spare: (pieces: number) => Form
  /** One piece of those that fly and were not observed; null where none is left. */
  readonly next: () => Form | null
}

/**
 * One standard deviation of a mishap, in masses of the line: enough for any reading to be its
 * own.
 */
const ANY_SIZE = 10

/**
 * A line's pieces share its errors and its own one, and each differs a little from its fellows
 * besides. Pieces once observed are taken to be among those that fly; those beyond its quantity
 * lie in the bag. `mishap` gives the line an error of any size on top, for a reading that nothing
 * else explains: it then tells of this line alone.
 */
export function lineForms(
  line: DoubtLine,
  groups: readonly ObservedPieces[],
  mishap = false,
): LineForms {
  if (groups.length === 0) {
    const flying = piecesForm(line, 'rest', line.quantity, mishap)
    return formsOfLine(line, flying, NOT_OBSERVED, line.quantity, mishap)
  }
  let left = line.quantity
  const flying: Form[] = []
  const observed = new Map<string, Form>()
  for (const { observationId, pieces } of groups) {
    const fly = Math.min(left, pieces)
    left -= fly
    const flown = piecesForm(line, `${observationId}:flying`, fly, mishap)
    const spare = piecesForm(line, `${observationId}:spare`, pieces - fly, mishap)
    flying.push(flown)
    observed.set(observationId, add([flown, spare]))
  }
  flying.push(piecesForm(line, 'rest', left, mishap))
  return formsOfLine(line, add(flying), observed, left, mishap)
}

const NOT_OBSERVED: ReadonlyMap<string, Form> = new Map()

function formsOfLine(
  line: DoubtLine,
  flying: Form,
  observed: ReadonlyMap<string, Form>,
  left: number,
  mishap: boolean,
): LineForms {
  // The same form for the same number: a frame asks for its spares many times over.
  let spares: Map<number, Form> | null = null
  return {
    flying,
    observed,
    spare: (pieces) => {
      const form = spares?.get(pieces) ?? piecesForm(line, 'spare', pieces, mishap)
      spares ??= new Map()
      spares.set(pieces, form)
      return form
    },
    next: () => (left > 0 ? nextPiece(line, left) : null),
  }
}

/**
 * The scatter of `left` pieces together is one error; a single one of them has its share of it,
 * and a rest of its own.
 */
function nextPiece(line: DoubtLine, left: number): Form {
  const { id, each, scatter } = line
  const sigma = scatter * each
  const piece = piecesForm({ ...line, scatter: 0 }, 'rest', 1, false)
  const own = formOf(0, [
    [scatterId(id, 'rest'), sigma / Math.sqrt(left)],
    [scatterId(id, 'next'), sigma * Math.sqrt(1 - 1 / left)],
  ])
  return add([piece, own])
}

function piecesForm(line: DoubtLine, group: string, pieces: number, mishap: boolean): Form {
  const { id, each, doubt, scatter } = line
  const whole = each * pieces
  const ids: string[] = []
  const effects: number[] = []
  for (const error of doubt.shared) pushError(ids, effects, error.id, error.effect * whole)
  if (doubt.own !== 0) pushError(ids, effects, ownId(id), doubt.own * whole)
  if (scatter !== 0) {
    pushError(ids, effects, scatterId(id, group), scatter * each * Math.sqrt(pieces))
  }
  if (mishap) pushError(ids, effects, mishapId(id), ANY_SIZE * whole)
  return { mid: whole, ids, effects, least: mishap ? 0 : (doubt.least ?? 0) * whole }
}

function pushError(ids: string[], effects: number[], id: string, effect: number): void {
  if (effect === 0) return
  ids.push(id)
  effects.push(effect)
}

export const ownId = (lineId: string): string => ofLine(lineId, 'own')
const mishapId = (lineId: string): string => ofLine(lineId, 'mishap')
const scatterId = (lineId: string, group: string): string => ofLine(lineId, `scatter ${group}`)

function ofLine(lineId: string, what: string): string {
  return `line|${lineId}|${what}`
}

/** The line an error belongs to alone; null for a shared one. */
export function ownerOf(errorId: string): string | null {
  return errorId.startsWith('line|') ? errorId.slice(5, errorId.lastIndexOf('|')) : null
}

const add = (forms: readonly Form[]): Form => sumForms(forms.map((form) => [form, 1] as const))
