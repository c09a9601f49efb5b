import type { StiffnessOf } from '../../core/choose/layerStiffness.ts'
import { createPricer, type ChoiceSetup } from '../../core/choose/partOptions.ts'
import type { GivesOf } from '../../core/choose/gives/types.ts'
import { rowOnceChanged } from '../../core/choose/sumWith.ts'
import { carriedLessons } from '../../core/frame/lessonsOf.ts'
import type { Lesson } from '../../core/doubt/lessons.ts'
import type { FramePart, FrameRow, FrameSum } from '../../core/frame/types.ts'
import type { Census } from '../../core/model/census.ts'
import type { Frame } from '../../core/model/frame.ts'
import {
  boughtAircraft,
  frameSum,
  ledgerRows,
  reckonedRuns,
  type LedgerRow,
} from '../../state/store/derived.ts'
import { materialOf } from '../../state/store/materialOf.ts'
import type { AppState } from '../../state/store/types.ts'
import { censusOf } from '../ledger/partWork.ts'

/** The frame as one moment had it, for sums of what it might be instead. */
export interface FrameThen {
  readonly frame: Frame
  readonly rows: readonly FrameRow[]
  readonly parts: readonly FramePart[]
  readonly setup: ChoiceSetup
  readonly lessons: readonly Lesson[]
  /** What it prints, g. */
  readonly printedG: number
  /** Of parts whose layers are counted as they stand. */
  readonly censuses: ReadonlyMap<string, Census>
}

function lookAt(state: AppState): FrameThen {
  const { frame, workshop } = state
  const rows = ledgerRows(state)
  const runs = reckonedRuns(state)
  return {
    frame: { ...frame, aircraft: boughtAircraft(state) },
    rows: rows.flatMap(({ sum }) => (sum === null ? [] : [sum])),
    parts: rows.map(({ part, material, figures, work }): FramePart => {
      const share = runs?.shares.get(part.id)
      const printed = share === undefined ? {} : { share }
      return { part, material, figures, ...printed, failed: work.kind === 'failed' }
    }),
    setup: {
      printer: frame.printer,
      prices: frame.prices,
      materialOf: (id) => materialOf(frame, id),
    },
    printedG: frameSum(state).printed.massG.mid,
    lessons: carriedLessons(workshop.lessons, frame.id),
    censuses: new Map(
      rows.flatMap((row): (readonly [string, Census])[] => {
        const census = presentCensus(row)
        return census === null ? [] : [[row.part.id, census]]
      }),
    ),
  }
}

let last: {
  readonly rows: readonly LedgerRow[]
  readonly sum: FrameSum
  readonly moment: FrameThen
} | null = null

/** The frame of this moment; the same object while nothing in its sums changed. */
export function frameThen(state: AppState): FrameThen {
  const rows = ledgerRows(state)
  const sum = frameSum(state)
  if (last === null || last.rows !== rows || last.sum !== sum) {
    last = { rows, sum, moment: lookAt(state) }
  }
  return last.moment
}

/** Prices other ways of one part of that frame; `present` is its count as it stands. */
export function pricerOf(
  { parts, frame, setup, lessons }: FrameThen,
  row: FrameRow,
  present: Census,
  stiffnessOf: StiffnessOf,
  givesOf: GivesOf | null = null,
): ReturnType<typeof createPricer> {
  const changed = rowOnceChanged(parts, frame, row, present, setup, lessons)
  return createPricer(row, present, setup, stiffnessOf, changed, givesOf)
}

/** Where nobody asks how stiff a way is. */
export const NOT_ASKED: StiffnessOf = () => null

/** Counted for the part as it stands; null while a newer count is on its way. */
export function presentCensus({ work, stale }: LedgerRow): Census | null {
  return stale ? null : censusOf(work)
}
