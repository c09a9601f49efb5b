import { scaleNoiseG } from '../doubt/readings.ts'
import { layingErrors, spoolErrors } from '../doubt/factors.ts'
import type { Material, PartFigures, Printer } from '../model/figures.ts'
import type { Part, WeighIn } from '../model/frame.ts'
import { exactRange, ZERO_RANGE } from '../model/ranges.ts'
import type { PieceShare } from '../model/runs.ts'
import type { DoubtedPart, WeighedPieces } from './frameDoubt.ts'
import { SCALE_STEP_G } from './itemLine.ts'
import type { PieceMass } from './pieceMass.ts'

const SURE = { shared: [], own: 0 } as const

/** A part with the mass of its piece, as the model of doubt has it. */
export function doubtedPart(
  part: Part,
  material: Material,
  printer: Printer,
  figures: PartFigures | null,
  mass: PieceMass,
  share?: PieceShare,
): DoubtedPart {
  const { id, name, quantity, spares } = part
  if (figures === null) {
    const none = scaleFigures(part, mass.massG)
    const alone = { aloneS: 0, weighed: null, byScale: true } as const
    return { id, name, quantity, spares, material, figures: none, ...alone }
  }
  const weighed = weighedPieces(part, material, printer, figures, mass)
  const aloneS = figures.timeS.mid
  const printed = share === undefined ? figures : inRuns(figures, share)
  return { id, name, quantity, spares, material, figures: printed, aloneS, weighed }
}

/** The same plastic at the hours and the money it takes beside others. */
function inRuns(
  figures: PartFigures,
  { timeS, timeDoubt, cost, costDoubt }: PieceShare,
): DoubtedPart['figures'] {
  const { massG, filamentM, doubt } = figures
  return { massG, filamentM, timeS, cost, doubt: { ...doubt, time: timeDoubt, cost: costDoubt } }
}

/**
 * Nothing was calculated: the mass is as sure as the scale, and shares no error with other prints.
 */
function scaleFigures({ weighIn }: Part, massG: number): DoubtedPart['figures'] {
  const own = weighIn === undefined ? 0 : scaleNoise(weighIn)
  return {
    massG: exactRange(massG),
    cost: ZERO_RANGE,
    timeS: ZERO_RANGE,
    filamentM: ZERO_RANGE,
    doubt: {
      mass: { shared: [], own },
      spool: SURE,
      filament: SURE,
      time: SURE,
      cost: SURE,
    },
  }
}

/** One standard deviation of what the scale says of one piece, as a share. */
function scaleNoise({ massG, pieces = 1, tareG, stepG }: WeighIn): number {
  const tared = (tareG ?? 0) > 0
  return scaleNoiseG(massG * pieces, stepG ?? SCALE_STEP_G, tared) / pieces / massG
}

/**
 * What the scale says of the part's pieces as they are. Weighed before a change, their ratio
 * carries over, but no better than the count of both is; of another spool or on another printer,
 * no better than those are.
 */
function weighedPieces(
  { weighIn }: Part,
  material: Material,
  printer: Printer,
  { doubt }: PartFigures,
  { massG, massFrom, changes }: PieceMass,
): WeighedPieces | null {
  if (weighIn === undefined || massFrom === 'calculated') return null
  const pieces = weighIn.pieces ?? 1
  const errors = [
    ...(massFrom === 'weighed before' ? [doubt.mass.own] : []),
    ...(changes.includes('material') ? spoolErrors(material).map(({ effect }) => effect) : []),
    ...(changes.includes('printer') || changes.includes('material')
      ? layingErrors(printer.id, material, 1).map(({ effect }) => effect)
      : []),
  ]
  return {
    eachG: massG,
    pieces,
    noiseG: massG * Math.hypot(scaleNoise(weighIn), ...errors.map((error) => Math.SQRT2 * error)),
    trusted: weighIn.trusted ?? false,
  }
}
