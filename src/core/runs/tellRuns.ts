import type { FrameRow, FrameSum } from '../frame/types.ts'
import type { Range } from '../model/figures.ts'
import { addRanges, scaleRange, ZERO_RANGE } from '../model/ranges.ts'
import type { PlannedRun } from './planRuns.ts'
import type { Bed, PieceOutline, Spot } from './types.ts'

/** One print run in the figures that are shown of it. */
export interface RunTold {
  /** From 1, in the order they are printed. */
  readonly number: number
  readonly material: string
  readonly layerMm: number
  readonly pieces: readonly {
    readonly partId: string
    readonly part: string
    readonly count: number
  }[]
  readonly timeS: Range
  /** On the scale, supports and brims off. */
  readonly massG: number
  /** Of the whole bed, 0–1, by the shadows of the pieces. */
  readonly bedShare: number
  /** With what failed ones before a good one cost. */
  readonly cost: number
  /** What is lost when it fails at the end. */
  readonly lostAtEnd: number
  readonly spots: readonly Spot[]
}

/** All runs of a frame together. */
export interface RunsTold {
  readonly runs: readonly RunTold[]
  readonly timeS: Range
  readonly cost: number
  /** What the same pieces take each by itself, as the frame's own sums have it. */
  readonly singlyS: Range
}

/**
 * Planned runs in figures. Their hours follow what scale and clock taught of the parts in them: a
 * run is off by what its pieces are off by, weighted by their hours, end to end, as for one printer.
 */
export function tellRuns(
  planned: readonly PlannedRun[],
  { rows }: Pick<FrameSum, 'rows'>,
  outlines: ReadonlyMap<string, Pick<PieceOutline, 'areaMm2'>>,
  bed: Bed,
): RunsTold {
  const byId = new Map(rows.map((row) => [row.part.id, row]))
  const runs = planned.map((run, i) => ({ number: i + 1, ...tellRun(run, byId, outlines, bed) }))
  return {
    runs,
    timeS: runs.reduce((sum, { timeS }) => addRanges(sum, timeS), ZERO_RANGE),
    cost: runs.reduce((sum, { cost }) => sum + cost, 0),
    singlyS: runs
      .flatMap(({ pieces }) => pieces)
      .reduce((sum, { partId, count }) => {
        const row = byId.get(partId)
        return row === undefined ? sum : addRanges(sum, scaleRange(eachS(row), count))
      }, ZERO_RANGE),
  }
}

function tellRun(
  { materialId, layerMm, spots, timeS, cost, lostAtEnd }: PlannedRun,
  byId: ReadonlyMap<string, FrameRow>,
  outlines: ReadonlyMap<string, Pick<PieceOutline, 'areaMm2'>>,
  bed: Bed,
): Omit<RunTold, 'number'> {
  const counts = new Map<string, number>()
  for (const { partId } of spots) counts.set(partId, (counts.get(partId) ?? 0) + 1)
  const known = [...counts].flatMap(([partId, count]) => {
    const row = byId.get(partId)
    return row === undefined || row.figures === null
      ? []
      : [{ row, figures: row.figures, count, areaMm2: outlines.get(partId)?.areaMm2 ?? 0 }]
  })
  const sum = (value: (one: (typeof known)[number]) => number): number =>
    known.reduce((total, one) => total + one.count * value(one), 0)
  const singlyS = sum(({ figures }) => figures.timeS.mid)
  const learned = (end: keyof Range): number =>
    singlyS > 0 ? sum(({ row }) => eachS(row)[end]) / singlyS : 1
  return {
    material: known[0]?.row.material.name ?? materialId,
    layerMm,
    pieces: known.map(({ row, count }) => ({ partId: row.part.id, part: row.part.name, count })),
    timeS: {
      low: timeS * learned('low'),
      mid: timeS * learned('mid'),
      high: timeS * learned('high'),
    },
    massG: sum(({ row }) => row.pieceG.mid),
    bedShare: sum(({ areaMm2 }) => areaMm2) / (bed.widthMm * bed.depthMm),
    cost,
    lostAtEnd,
    spots,
  }
}

/** One piece by itself, after what was learnt. */
function eachS({ part: { quantity, spares }, figures, withSpares }: FrameRow): Range {
  const pieces = quantity + spares
  return pieces > 0 ? scaleRange(withSpares.timeS, 1 / pieces) : (figures?.timeS ?? ZERO_RANGE)
}
