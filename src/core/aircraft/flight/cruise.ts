import type { FlightSetup, WingSetup } from '../../model/aircraft.ts'
import type { Range } from '../../model/figures.ts'
import { combineSpreads, rangeAbout } from '../../figures/spread.ts'
import { AIR_DENSITY, GRAVITY } from './air.ts'
import { packEnergyWh } from './pack.ts'
import { wingLoading } from './wing.ts'

/** A plane in level flight at one speed, calm air. */
export interface CruiseFigures {
  readonly speedMS: number
  readonly liftCoefficient: number
  readonly liftToDrag: Range
  /** Electrical, electronics included. */
  readonly powerW: Range
  readonly minutes: Range
  readonly distanceKm: Range
  /** Speed of least power, but not below 1.2 × the stall speed. */
  readonly easiestMS: number
  /** Slower than the wing surely carries it. */
  readonly nearStall: boolean
}

export interface Cruise {
  /** What has to be typed first, as the fields are called. */
  readonly missing: readonly string[]
  /** Null while anything is missing. */
  readonly figures: CruiseFigures | null
}

/**
 * Of the whole plane without lift, on its wing area: small planes with open pods and gear (common
 * practice, no source).
 */
export const DRAG_ESTIMATE: Range = { low: 0.025, mid: 0.04, high: 0.06 }
/** A typed one is somebody's estimate too (ours). */
const DRAG_TYPED_ERROR = 0.15
/** Span efficiency of a plain wing (common practice, no source). */
const SPAN_EFFICIENCY: Range = { low: 0.65, mid: 0.75, high: 0.85 }
/**
 * Push over electrical power: propeller in flight 0.5 to 0.7 (common practice, no source) times
 * motor and controller 0.63 to 0.72 (whole craft over propellers, NASA/TM-2018-219758 over AIAA
 * 2011-1255).
 */
const PUSH: Range = { low: 0.32, mid: 0.4, high: 0.5 }

const SAFE_OVER_STALL = 1.2

/**
 * Level flight of a plane: drag = q S (CD0 + CL² / (π A e)), A the span squared over the area (any
 * text on flight mechanics; Anderson, Introduction to Flight, ch. 6). Errors of drag, span
 * efficiency and drive are independent of each other.
 */
export function cruise(wing: WingSetup, flight: FlightSetup | null, auwG: number): Cruise {
  const { areaDm2, spanMm, cruiseMS } = wing
  const missing = [
    ...(auwG > 0 ? [] : ['a mass']),
    ...(areaDm2 > 0 ? [] : ['the wing area']),
    ...(spanMm === undefined ? ['the span'] : []),
    ...(cruiseMS === undefined ? ['the cruise speed'] : []),
    ...(flight === null ? ['motors and pack'] : []),
  ]
  if (missing.length > 0 || spanMm === undefined || cruiseMS === undefined || flight === null) {
    return { missing, figures: null }
  }
  const areaM2 = areaDm2 / 100
  const aspect = (spanMm / 1000) ** 2 / areaM2
  const weightN = (auwG / 1000) * GRAVITY
  const pressure = 0.5 * AIR_DENSITY * cruiseMS ** 2
  const lift = weightN / (pressure * areaM2)
  const drag = dragOf(wing)
  const dragN = (zero: number, span: number): number =>
    pressure * areaM2 * (zero + lift ** 2 / (Math.PI * aspect * span))
  const avionicsW = Math.max(0, flight.avionicsW)
  const watts = (zero: number, span: number, push: number): number =>
    (dragN(zero, span) * cruiseMS) / push + avionicsW

  const mid = watts(drag.mid, SPAN_EFFICIENCY.mid, PUSH.mid)
  const powerW = rangeOf(mid, [
    [
      watts(drag.low, SPAN_EFFICIENCY.mid, PUSH.mid),
      watts(drag.high, SPAN_EFFICIENCY.mid, PUSH.mid),
    ],
    [
      watts(drag.mid, SPAN_EFFICIENCY.high, PUSH.mid),
      watts(drag.mid, SPAN_EFFICIENCY.low, PUSH.mid),
    ],
    [
      watts(drag.mid, SPAN_EFFICIENCY.mid, PUSH.high),
      watts(drag.mid, SPAN_EFFICIENCY.mid, PUSH.low),
    ],
  ])
  const midN = dragN(drag.mid, SPAN_EFFICIENCY.mid)
  const forceN = rangeOf(midN, [
    [dragN(drag.low, SPAN_EFFICIENCY.mid), dragN(drag.high, SPAN_EFFICIENCY.mid)],
    [dragN(drag.mid, SPAN_EFFICIENCY.high), dragN(drag.mid, SPAN_EFFICIENCY.low)],
  ])
  const usableWh = packEnergyWh(flight) * Math.min(1, flight.usableShare)
  const minutes = inverse(60 * usableWh, powerW)
  const stall = wingLoading(wing, auwG)?.stallMS ?? { low: 0, mid: 0, high: 0 }
  const best = Math.sqrt(3 * drag.mid * Math.PI * aspect * SPAN_EFFICIENCY.mid)
  return {
    missing,
    figures: {
      speedMS: cruiseMS,
      liftCoefficient: lift,
      liftToDrag: inverse(weightN, forceN),
      powerW,
      minutes,
      distanceKm: {
        low: (minutes.low * 60 * cruiseMS) / 1000,
        mid: (minutes.mid * 60 * cruiseMS) / 1000,
        high: (minutes.high * 60 * cruiseMS) / 1000,
      },
      easiestMS: Math.max(
        SAFE_OVER_STALL * stall.mid,
        Math.sqrt((2 * weightN) / (AIR_DENSITY * areaM2 * best)),
      ),
      nearStall: cruiseMS < SAFE_OVER_STALL * stall.high,
    },
  }
}

function dragOf({ dragCoefficient }: WingSetup): Range {
  if (dragCoefficient === undefined) return DRAG_ESTIMATE
  return rangeAbout(dragCoefficient, { low: DRAG_TYPED_ERROR, high: DRAG_TYPED_ERROR })
}

/** About `mid`, from what each input alone makes of it at its ends. */
function rangeOf(mid: number, ends: readonly (readonly [low: number, high: number])[]): Range {
  return rangeAbout(
    mid,
    combineSpreads(ends.map(([low, high]) => ({ low: 1 - low / mid, high: high / mid - 1 }))),
  )
}

function inverse(over: number, { low, mid, high }: Range): Range {
  return { low: over / high, mid: over / mid, high: over / low }
}
