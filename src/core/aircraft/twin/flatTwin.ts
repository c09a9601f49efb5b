import type { TwinSetup } from '../../model/aircraft.ts'
import type { Plate } from '../../data/plates.ts'
import type { Range } from '../../model/figures.ts'
import { plateBendingNm, thicknessForBendingMm } from './bending.ts'
import type { PlateOutline } from './outline.ts'

/** A printed part that could be cut from plate. */
export interface FlatPart {
  readonly partId: string
  readonly outline: Pick<PlateOutline, 'areaMm2' | 'cutLengthMm' | 'sheetMm'>
  /** Printed, N·m² per metre of width; see `printedBendingNm`. */
  readonly bendingNm: number
}

/** The part in one thickness of plate. */
export interface PlateChoice {
  readonly thicknessMm: number
  readonly massG: Range
  /** N·m² per metre of width. */
  readonly bendingNm: Range
  /** Bending stiffness over the printed part's. */
  readonly stiffness: Range
}

/** One piece of a flat part cut from plate instead of printed. */
export interface FlatTwin {
  readonly partId: string
  readonly plate: Plate
  /** As stiff as the printed part. mm */
  readonly equalMm: Range
  /** At the middle of `equalMm`, whether it can be had or not. */
  readonly equal: PlateChoice
  /**
   * Nearest stocked thicknesses below and not below `equalMm.mid`; null past the end of the list.
   */
  readonly below: PlateChoice | null
  readonly above: PlateChoice | null
  /**
   * Typed, or else the thinnest stocked plate that is at least as stiff, or else the thickest there
   * is.
   */
  readonly chosen: PlateChoice
  readonly typed: boolean
  /** Money: the smallest rectangle the part fits in, offcut paid too. */
  readonly plateCost: number
  readonly cutCost: number
  readonly cost: number
  /** Of that rectangle, what is left over. */
  readonly offcutMm2: number
  readonly offcutShare: number
}

/** Stiffness of a printed part is known to about 30 % (ours): layers bond as well as they do. */
const PRINTED_SPREAD = 0.3

/**
 * The part's twin from `plate`: the same outline, thickness for equal bending stiffness under a
 * load from above. Sideways a plate of the same outline is stiffer still, twisted it is softer than
 * a tall box: neither is compared here.
 */
export function flatTwin(
  part: FlatPart,
  plate: Plate,
  setup: Pick<TwinSetup, 'thicknessMm' | 'platePricePerDm2' | 'cutPricePerM'>,
): FlatTwin {
  const { areaMm2, cutLengthMm, sheetMm } = part.outline
  const [softest, stiffest] = plate.youngsRangeGPa
  const equalMm = {
    low: thicknessForBendingMm(part.bendingNm * (1 - PRINTED_SPREAD), stiffest),
    mid: thicknessForBendingMm(part.bendingNm, plate.youngsGPa.value),
    high: thicknessForBendingMm(part.bendingNm * (1 + PRINTED_SPREAD), softest),
  }
  const choose = (thicknessMm: number): PlateChoice => plateChoice(part, plate, thicknessMm)
  const belowMm = plate.stockedMm.findLast((thickness) => thickness < equalMm.mid)
  const aboveMm = plate.stockedMm.find((thickness) => thickness >= equalMm.mid)
  const typedMm = setup.thicknessMm[part.partId]
  const typed = typedMm !== undefined && typedMm > 0
  const sheetMm2 = sheetMm[0] * sheetMm[1]
  const plateCost = (sheetMm2 / 10_000) * setup.platePricePerDm2
  const cutCost = (cutLengthMm / 1000) * setup.cutPricePerM
  const offcutMm2 = Math.max(0, sheetMm2 - areaMm2)
  return {
    partId: part.partId,
    plate,
    equalMm,
    equal: choose(equalMm.mid),
    below: belowMm === undefined ? null : choose(belowMm),
    above: aboveMm === undefined ? null : choose(aboveMm),
    chosen: choose(typed ? typedMm : (aboveMm ?? belowMm ?? equalMm.mid)),
    typed,
    plateCost,
    cutCost,
    cost: plateCost + cutCost,
    offcutMm2,
    offcutShare: sheetMm2 > 0 ? offcutMm2 / sheetMm2 : 0,
  }
}

function plateChoice(part: FlatPart, plate: Plate, thicknessMm: number): PlateChoice {
  const [lightest, heaviest] = plate.densityRangeGCm3
  const [softest, stiffest] = plate.youngsRangeGPa
  const grams = (density: number): number => plateMassG(part.outline.areaMm2, thicknessMm, density)
  const bendingNm = {
    low: plateBendingNm(softest, thicknessMm),
    mid: plateBendingNm(plate.youngsGPa.value, thicknessMm),
    high: plateBendingNm(stiffest, thicknessMm),
  }
  const against = (own: number, spread: number): number =>
    part.bendingNm > 0 ? own / (part.bendingNm * (1 + spread)) : Infinity
  return {
    thicknessMm,
    massG: { low: grams(lightest), mid: grams(plate.densityGCm3.value), high: grams(heaviest) },
    bendingNm,
    stiffness: {
      low: against(bendingNm.low, PRINTED_SPREAD),
      mid: against(bendingNm.mid, 0),
      high: against(bendingNm.high, -PRINTED_SPREAD),
    },
  }
}

/** Mass of a cut piece, g; density in g/cm³. */
export function plateMassG(areaMm2: number, thicknessMm: number, densityGCm3: number): number {
  return (areaMm2 * thicknessMm * densityGCm3) / 1000
}
