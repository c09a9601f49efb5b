import type { Blades, FlightSetup, Item } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { scaleRange } from '../../model/ranges.ts'
import { AIR_DENSITY, GRAVITY } from '../flight/air.ts'
import { BLADES_DEFAULT, THRUST_COEFFICIENT } from '../flight/blades.ts'
import type { FlatPart, FlatTwin } from './flatTwin.ts'
import { firstBendingHz } from './firstBending.ts'

/** An arm's first bending, printed and cut from plate, beside what its propeller shakes it with in hover. */
export interface ArmShake {
  readonly partId: string
  readonly name: string
  /** Length that swings. */
  readonly freeMm: number
  /** False where the length is only a share of the part's own. */
  readonly typed: boolean
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
 * Stiffness of printed plastic is known to about 30 %, which is 15 of frequency; holding and joints
 * take the rest (ours).
 */
const SPREAD = 0.2
/** An arm rings where it comes this near to what shakes it (common practice, no source). */
const NEAR = 0.15
/** How much of a part swings where nobody said; the rest is held between decks (common practice, no source). */
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

/** What sits on each motor: drive items without a place of their own, in whole sets of the motors. g */
export function tipMassG(items: readonly Item[], motors: number): number {
  return items
    .filter(
      ({ group, positionMm, quantity }) =>
        group === 'drive' && positionMm === null && quantity > 0 && quantity % motors === 0,
    )
    .reduce((sum, { massG, quantity }) => sum + (massG * quantity) / motors, 0)
}

/**
 * The first bending of an arm up and down, as a beam of its mean width held at one end. Null
 * without anything at its tip. Twist, sideways bending and the deck it is held by are left out;
 * what holds it is softer than a vice, so real arms ring lower.
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
  },
  flight: Pick<FlightSetup, 'motors' | 'propDiameterMm' | 'blades'>,
  tipG: number,
  auwG: number,
): ArmShake | null {
  const { partId, name, outline, twin, massG } = arm
  const [longMm] = outline.sheetMm
  const freeMm = arm.freeMm ?? FREE_SHARE * longMm
  if (!(tipG > 0) || !(longMm > 0) || !(freeMm > 0) || !(auwG > 0)) return null
  const widthM = outline.areaMm2 / longMm / 1000
  const hz = (bendingNm: number, pieceG: number): Range => {
    const mid = firstBendingHz({
      eiNm2: bendingNm * widthM,
      lengthM: freeMm / 1000,
      beamKg: (pieceG * Math.min(1, freeMm / longMm)) / 1000,
      tipKg: tipG / 1000,
    })
    return { low: mid * (1 - SPREAD), mid, high: mid * (1 + SPREAD) }
  }
  // The plate of equal stiffness has the printed part's stiffness.
  const printedHz = hz(twin.equal.bendingNm.mid, massG)
  const plateHz = hz(twin.chosen.bendingNm.mid, twin.chosen.massG.mid)
  const blades = flight.blades ?? BLADES_DEFAULT
  const turnHz = hoverTurnHz(auwG / flight.motors, flight.propDiameterMm, blades)
  const passHz = scaleRange(turnHz, blades)
  const rings = (own: Range): Ringing => ({ turn: near(own, turnHz), pass: near(own, passHz) })
  return {
    partId,
    name,
    freeMm,
    typed: arm.freeMm !== undefined,
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
