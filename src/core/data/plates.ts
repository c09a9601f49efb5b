import type { PlateId } from '../model/aircraft.ts'
import type { Sourced } from '../model/figures.ts'

/** Sheet that flat parts can be cut from. */
export interface Plate {
  readonly id: PlateId
  readonly name: string
  readonly densityGCm3: Sourced
  readonly densityRangeGCm3: readonly [low: number, high: number]
  /** In the plane of the plate, bent lengthwise. */
  readonly youngsGPa: Sourced
  readonly youngsRangeGPa: readonly [low: number, high: number]
  /** Thicknesses to be had, thinnest first. mm */
  readonly stockedMm: readonly number[]
  readonly stockedSource: string
  /** Said where someone decides to cut it. */
  readonly caution: string
}

const RECALLED = 'from memory, not read; change it to your seller’s'
const USUAL_SIZES = 'usual sizes, from memory; check your seller’s'

export const PLATES: Readonly<Record<PlateId, Plate>> = {
  carbon: {
    id: 'carbon',
    name: 'Carbon plate',
    densityGCm3: {
      value: 1.55,
      mark: 'derived',
      source:
        'between 1.5 (azom.com ArticleID=632, prepreg laminate) and 1.57–1.58 (EP-CF60 profile, hub.qmplus.qmul.ac.uk)',
    },
    densityRangeGCm3: [1.5, 1.6],
    youngsGPa: {
      value: 50,
      mark: 'derived',
      source:
        'quasi-isotropic lay-up by laminate theory from 0/90 cloth of 70 GPa ' +
        '(performance-composites.com); 70 holds along the fibres only',
    },
    youngsRangeGPa: [45, 55],
    // 2.5 and 5 mm are not on that list but in a retail 225 mm frame.
    stockedMm: [0.2, 0.3, 0.5, 0.8, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 10],
    stockedSource: 'plate seller’s list (tfpmaterial.com); 2.5 and 5 mm as in a retail frame',
    caution:
      'Dust from cutting carbon conducts electricity and irritates skin, eyes and lungs: ' +
      'cut wet or with extraction, wear a fitted P2/N95 mask or better, and keep it away ' +
      'from electronics.',
  },
  g10: {
    id: 'g10',
    name: 'G10 / FR4 plate',
    densityGCm3: {
      value: 1.825,
      mark: 'read',
      source: '1.80–1.85: keplastics.com, k-mac-plastics.net, acculam.com',
    },
    densityRangeGCm3: [1.8, 1.85],
    youngsGPa: {
      value: 18.6,
      mark: 'read',
      source:
        'flexural, lengthwise, NEMA minimum (keplastics.com, acculam.com); 15.2 crosswise, ' +
        'a maker gives 24.3 (hirosugi.jp)',
    },
    youngsRangeGPa: [15.2, 24.3],
    stockedMm: [0.5, 0.8, 1, 1.5, 1.6, 2, 2.5, 3, 4, 5, 6, 8, 10],
    stockedSource: USUAL_SIZES,
    caution:
      'Glass dust irritates skin, eyes and lungs: cut wet or with extraction and wear a fitted P2/N95 mask or better.',
  },
  plywood: {
    id: 'plywood',
    name: 'Birch plywood',
    densityGCm3: { value: 0.68, mark: 'memory', source: RECALLED },
    densityRangeGCm3: [0.63, 0.73],
    youngsGPa: { value: 9.5, mark: 'memory', source: RECALLED },
    youngsRangeGPa: [9, 10],
    stockedMm: [0.8, 1, 1.5, 2, 2.5, 3, 4, 5, 6.5, 9, 12],
    stockedSource: USUAL_SIZES,
    caution: 'Wear a dust mask when you saw or sand it; a laser needs extraction.',
  },
  aluminium: {
    id: 'aluminium',
    name: 'Aluminium 6061-T6',
    densityGCm3: {
      value: 2.72,
      mark: 'read',
      source: '2.71–2.73: two textbook appendix tables (one at ecoursesbook.com)',
    },
    densityRangeGCm3: [2.71, 2.73],
    youngsGPa: { value: 68.9, mark: 'read', source: 'textbook appendix tables (ecoursesbook.com)' },
    youngsRangeGPa: [68, 70],
    stockedMm: [0.5, 0.8, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10],
    stockedSource: USUAL_SIZES,
    caution: 'Clamp it, wear eye protection and take off every burr: the edges cut.',
  },
}
