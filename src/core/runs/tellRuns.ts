import type { Spot } from '../model/runs.ts'
import { rangeOf } from '../doubt/bell.ts'
import { sumForms } from '../doubt/form.ts'
import { lineIdOf, type FrameFigure } from '../frame/frameDoubt.ts'
import type { FrameRow, FrameSum } from '../frame/types.ts'
import type { Printer, Range } from '../model/figures.ts'
import { scaleRange } from '../model/ranges.ts'
import type { ReckonedRun, RunPieces } from './reckonRuns.ts'
import { printerOf, type Printers } from './runPrinters.ts'
import type { PieceOutline } from './types.ts'

/** One print run in the figures that are shown of it. */
export interface RunTold {
  /** From 1, in the order they are started. */
  readonly number: number
  readonly printer: Printer
  readonly material: string
  readonly materialId: string
  readonly layerMm: number
  readonly pieces: readonly {
    readonly partId: string
    readonly part: string
    readonly count: number
  }[]
  readonly timeS: Range
  /** As calculated, before what scale and clock taught. */
  readonly calculatedS: number
  /** On the scale, supports and brims off. */
  readonly massG: Range
  /** Off the spool, supports and brims with it. */
  readonly spoolG: Range
  /** Of the whole bed, 0–1, by the shadows of the pieces. */
  readonly bedShare: number
  /** With what failed ones before a good one cost. */
  readonly cost: Range
  /** What is lost when it fails at the end. */
  readonly lostAtEnd: number
  readonly spots: readonly Spot[]
}

/**
 * Reckoned runs in figures, out of the frame's one model of errors: what scale and clock taught of
 * the pieces in a run is in its grams, hours and money, and the runs of all pieces together are the
 * frame's own sums.
 */
export function tellRuns(
  runs: readonly ReckonedRun[],
  { rows, doubt }: Pick<FrameSum, 'rows' | 'doubt'>,
  outlines: ReadonlyMap<string, Pick<PieceOutline, 'areaMm2'>>,
  printers: Printers,
): readonly RunTold[] {
  const byId = new Map(rows.map((row) => [row.part.id, row]))
  return runs.map((run, i) => tellRun(run, i + 1, { byId, doubt, outlines, printers }))
}

interface Frame {
  readonly byId: ReadonlyMap<string, FrameRow>
  readonly doubt: FrameSum['doubt']
  readonly outlines: ReadonlyMap<string, Pick<PieceOutline, 'areaMm2'>>
  readonly printers: Printers
}

function tellRun(
  { printerId, materialId, layerMm, spots, timeS, lostAtEnd, pieces }: ReckonedRun,
  number: number,
  { byId, doubt, outlines, printers }: Frame,
): RunTold {
  const known = pieces.flatMap((own) => {
    const row = byId.get(own.partId)
    return row === undefined ? [] : [{ ...own, row }]
  })
  const printer = printerOf(printers, printerId)
  const [widthMm, depthMm] = printer.bedMm
  const areaMm2 = known.reduce(
    (sum, { partId, count }) => sum + count * (outlines.get(partId)?.areaMm2 ?? 0),
    0,
  )
  const massG = known.reduce((sum, { row, count }) => sum + count * row.pieceG.mid, 0)
  // What scale and spool taught of the kept plastic holds for what is torn off too.
  const spoolG = known.reduce((sum, { row: { figures, pieceG }, count }) => {
    const ratio = figures !== null && figures.massG.mid > 0 ? pieceG.mid / figures.massG.mid : 1
    return sum + count * ratio * (figures?.spoolG.mid ?? 0)
  }, 0)
  const massRange = rangeIn(doubt, 'mass', pieces)
  return {
    number,
    printer,
    material: known[0]?.row.material.name ?? materialId,
    materialId,
    layerMm,
    pieces: known.map(({ row, count }) => ({ partId: row.part.id, part: row.part.name, count })),
    timeS: rangeIn(doubt, 'time', pieces, (own) => own.timeS),
    calculatedS: timeS,
    massG: scaledTo(massRange, massG),
    spoolG: scaledTo(massRange, spoolG),
    bedShare: areaMm2 / (widthMm * depthMm),
    cost: rangeIn(doubt, 'cost', pieces, ({ cost }) => cost.mid),
    lostAtEnd,
    spots,
  }
}

/**
 * A figure of the pieces of a run, which may take another share of it here than in the mean of
 * their part.
 */
function rangeIn(
  { known, parts }: FrameSum['doubt'],
  figure: Exclude<FrameFigure, 'filament'>,
  pieces: readonly RunPieces[],
  eachOf?: (own: RunPieces) => number,
): Range {
  const forms = pieces.flatMap((own) => {
    const part = parts.find(({ id }) => id === own.partId)
    if (part === undefined) return []
    const { massG, timeS, cost } = part.figures
    const mean = { mass: massG, time: timeS, cost }[figure].mid
    const times = eachOf === undefined || !(mean > 0) ? 1 : eachOf(own) / mean
    return [[known.spare(lineIdOf(figure, own.partId), own.count), times] as const]
  })
  return rangeOf(known.bell(sumForms(forms)))
}

/** Of a weighed part the scale says the middle, see `frameDoubt`. */
function scaledTo(range: Range, mid: number): Range {
  return range.mid > 0 ? scaleRange(range, mid / range.mid) : { low: mid, mid, high: mid }
}
