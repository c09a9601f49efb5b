import type { Blades, FlightSetup, Item } from '../../model/aircraft.ts'
import { rangeOfFigure } from '../../doubt/figureDoubt.ts'
import type { FigureDoubt } from '../../model/doubt.ts'
import type { Range } from '../../model/figures.ts'
import { scaleRange } from '../../model/ranges.ts'
import { beamOf } from '../../stiffness/part/beam.ts'
import type { Laid } from '../../stiffness/part/partGrid.ts'
import type { PartSections } from '../../stiffness/part/sections.ts'
import { AIR_DENSITY, GRAVITY } from '../flight/air.ts'
import { BLADES_DEFAULT, THRUST_COEFFICIENT } from '../flight/blades.ts'
import type { FlatPart, FlatTwin } from './flatTwin.ts'
import { firstBendingHz } from './firstBending.ts'

/**
 * An arm's first bending, printed and cut from plate, beside what its propeller shakes it with in
 * hover.
 */
export interface ArmShake {
  readonly partId: string
  readonly name: string
  /** Length that swings. */
  readonly freeMm: number
  /**
   * False where nobody typed the length: up to its joints or grip, or a share of the part's own.
   */
  readonly typed: boolean
  /**
   * Its solid model, held at its joints; where a length was typed the beam of its own sections;
   * where neither is had a plain bar of its mean width.
   */
  readonly by: 'solid' | 'sections' | 'outline'
  /** Motor, propeller and what else sits at one arm's end. */
  readonly tipG: number
  readonly printedHz: Range
  readonly plateHz: Range
  readonly blades: Blades
  /** Turns a second of a propeller in hover: what an unbalanced one shakes at. */
  readonly turnHz: Range
  /** Blades that pass the arm in a second: `blades` times as many. */
  readonly passHz: Range
  readonly printedRings: Ringing
  readonly cutRings: Ringing
}

/** Whether an arm may ring in hover, once a turn and once a blade. */
interface Ringing {
  readonly turn: boolean
  readonly pass: boolean
}

/**
 * Of a plain bar and of cut plate: stiffness is known to about 30 %, which is 15 of frequency;
 * holding and joints take the rest (ours).
 */
const SPREAD = 0.2
/** An arm rings where it comes this near to what shakes it (common practice, no source). */
const NEAR = 0.15
/**
 * How much of a part swings where nobody said; the rest is held between decks (common practice, no
 * source).
 */
const FREE_SHARE = 0.85
/**
 * Turns a second that carry `thrustG` on one propeller, √(T / (CT ρ D⁴)); the larger the
 * coefficient, the slower it turns.
 */
export function hoverTurnHz(
  thrustG: number,
  propDiameterMm: number,
  blades: Blades = BLADES_DEFAULT,
): Range {
  const newton = (thrustG / 1000) * GRAVITY
  const turns = (coefficient: number): number =>
    Math.sqrt(newton / (coefficient * AIR_DENSITY * (propDiameterMm / 1000) ** 4))
  const { low, mid, high } = THRUST_COEFFICIENT[blades]
  return { low: turns(high), mid: turns(mid), high: turns(low) }
}

/** What an arm has to ring above to be clear of its propeller's turns in hover. Hz */
export function aboveTurnsHz(turnHz: Range): number {
  return turnHz.high * (1 + NEAR)
}

/**
 * What sits on each motor, by the masses that were typed: drive items without a place of their own,
 * in whole sets of the motors. g
 */
export function tipMassG(items: readonly Item[], motors: number): number {
  return items
    .filter(
      ({ group, positionMm, quantity }) =>
        group === 'drive' && positionMm === null && quantity > 0 && quantity % motors === 0,
    )
    .reduce((sum, { massG, quantity }) => sum + (massG * quantity) / motors, 0)
}

/** An arm as a beam of its own sections, of the plastic and infill it has. */
export interface ArmBeam {
  readonly sections: PartSections
  readonly laid: Laid
  /** How far its tone may be off; as of the solid model. */
  readonly doubt: FigureDoubt
}

/**
 * The first tone of an arm: that of its solid model, which its sheet and Choose tell too; with a
 * typed free length that of a beam of its own sections; else that of a bar of its mean width. Null
 * without anything at its tip. The cut arm swings as the printed one with the plate's stiffness and
 * mass for its own. The deck it is held by is left out; what holds it is softer than a vice, so
 * real arms ring lower.
 */
export function armShake(
  arm: {
    readonly partId: string
    readonly name: string
    readonly outline: FlatPart['outline']
    readonly twin: FlatTwin
    /** Of one printed piece. */
    readonly massG: number
    /** Typed; undefined for a share of the part's length. */
    readonly freeMm: number | undefined
    /** Null where it is no beam, or its mesh is not at hand. */
    readonly beam: ArmBeam | null
    /** Null where it was not solved. */
    readonly solidHz: Range | null
  },
  flight: Pick<FlightSetup, 'motors' | 'propDiameterMm' | 'blades'>,
  tipG: number,
  auwG: number,
): ArmShake | null {
  const { partId, name, outline, twin, massG, beam } = arm
  const [longMm] = outline.sheetMm
  const freeMm = arm.freeMm ?? beam?.sections.spanMm ?? FREE_SHARE * longMm
  if (!(tipG > 0) || !(longMm > 0) || !(freeMm > 0) || !(auwG > 0)) return null
  const widthM = outline.areaMm2 / longMm / 1000
  const barHz = (bendingNm: number, pieceG: number): number =>
    firstBendingHz({
      eiNm2: bendingNm * widthM,
      lengthM: freeMm / 1000,
      beamKg: (pieceG * Math.min(1, freeMm / longMm)) / 1000,
      tipKg: tipG / 1000,
    })
  const spread = (mid: number): Range => ({
    low: mid * (1 - SPREAD),
    mid,
    high: mid * (1 + SPREAD),
  })
  // The plate of equal stiffness has the printed part's stiffness.
  const printedBarHz = barHz(twin.equal.bendingNm.mid, massG)
  const plateBarHz = barHz(twin.chosen.bendingNm.mid, twin.chosen.massG.mid)
  const says =
    beam === null ? null : beamOf(beam.sections, beam.laid, { loadN: 1, massG, tipG, freeMm })
  const beamHz = says?.kind === 'beam' ? says.firstHz : null
  const solidHz = arm.freeMm === undefined ? arm.solidHz : null
  const ownHz = beamHz === null || beam === null ? null : rangeOfFigure(beamHz, beam.doubt)
  const known = solidHz ?? ownHz
  const printedHz = known ?? spread(printedBarHz)
  const plateHz = spread((printedHz.mid * plateBarHz) / printedBarHz)
  const blades = flight.blades ?? BLADES_DEFAULT
  const turnHz = hoverTurnHz(auwG / flight.motors, flight.propDiameterMm, blades)
  const passHz = scaleRange(turnHz, blades)
  const rings = (own: Range): Ringing => ({ turn: near(own, turnHz), pass: near(own, passHz) })
  return {
    partId,
    name,
    freeMm,
    typed: arm.freeMm !== undefined,
    by: solidHz !== null ? 'solid' : known !== null ? 'sections' : 'outline',
    tipG,
    printedHz,
    plateHz,
    blades,
    turnHz,
    passHz,
    printedRings: rings(printedHz),
    cutRings: rings(plateHz),
  }
}

function near(own: Range, shaken: Range): boolean {
  return own.high >= shaken.low * (1 - NEAR) && own.low <= shaken.high * (1 + NEAR)
}
