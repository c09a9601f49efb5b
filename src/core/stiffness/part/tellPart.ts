import { acrossShareOf } from '../../data/acrossShares.ts'
import { rangeOfFigure } from '../../doubt/figureDoubt.ts'
import { stiffnessDoubt, strengthDoubt, toneDoubt } from '../../doubt/stiffness.ts'
import type { Material, Range } from '../../model/figures.ts'
import type { Vec3 } from '../../model/mesh.ts'
import type { PlasticModuli } from '../moduli/printedModuli.ts'
import type { PartSolved } from './solvePart.ts'

/** How a printed part gives, breaks and rings under its load, each with what it is unsure by. */
export interface StiffnessFigures {
  readonly deflectionMm: Range
  readonly slopeDeg: Range
  /** Load over deflection. N/mm */
  readonly stiffness: Range
  /** Rising; empty where they were not asked for. Hz */
  readonly hz: readonly Range[]
  /** Strength over the highest stress; null where nothing is strained. */
  readonly safety: Safety | null
  /** Highest pull across the layers, MPa, and its middle in the grid's frame, mm. */
  readonly acrossMPa: number
  readonly acrossAtMm: Vec3
}

export interface Safety {
  readonly factor: Range
  readonly breaks: 'between layers' | 'along layers'
  /** Height above the bed. mm */
  readonly heightMm: number
}

/** The plastic as its printed bars are. */
export function plasticOf(material: Material): PlasticModuli {
  return {
    youngsMPa: 1000 * material.youngsGPa.value,
    acrossShare: acrossShareOf(material),
  }
}

export function tellPart(
  { deflectionMm, slopeDeg, stresses, hz }: PartSolved,
  loadN: number,
  material: Material,
): StiffnessFigures {
  const stiffness = rangeOfFigure(1, stiffnessDoubt(material))
  const gives = (mid: number): Range => ({
    low: mid / stiffness.high,
    mid,
    high: mid / stiffness.low,
  })
  const times = (mid: number): Range => ({
    low: mid * stiffness.low,
    mid,
    high: mid * stiffness.high,
  })
  return {
    deflectionMm: gives(deflectionMm),
    slopeDeg: gives(Math.abs(slopeDeg)),
    stiffness: times(loadN / deflectionMm),
    hz: hz.map((mid) => rangeOfFigure(mid, toneDoubt(material))),
    safety: safetyOf(stresses, material),
    acrossMPa: stresses.across.mpa,
    acrossAtMm: stresses.across.atMm,
  }
}

/** The weaker way of the two. */
function safetyOf(
  { across, along }: PartSolved['stresses'],
  material: Pick<Material, 'id' | 'name' | 'strengthAcrossMPa' | 'strengthInPlaneMPa'>,
): Safety | null {
  const between = across.mpa > 0 ? material.strengthAcrossMPa.value / across.mpa : Infinity
  const within = along.mpa > 0 ? material.strengthInPlaneMPa.value / along.mpa : Infinity
  const value = Math.min(between, within)
  if (!Number.isFinite(value)) return null
  const factor = rangeOfFigure(value, strengthDoubt(material))
  return between <= within
    ? { factor, breaks: 'between layers', heightMm: across.atMm[2] }
    : { factor, breaks: 'along layers', heightMm: along.atMm[2] }
}
