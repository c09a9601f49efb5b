import * as v from 'valibot'
import { FLIGHT_LIMITS, WING_LIMITS, type Limits } from '../../core/data/limits.ts'
import type {
  FlightSetup,
  FlownHover,
  GrowthAllowance,
  Item,
  MassLine,
  Place,
  SeasonSetup,
  TwinSetup,
  WingSetup,
} from '../../core/model/aircraft.ts'

/** Far beyond any aircraft, and small enough that sums and powers of such numbers stay numbers. */
const MOST = 1e9
const finite = v.pipe(v.number(), v.minValue(-MOST), v.maxValue(MOST))
const positive = v.pipe(finite, v.gtValue(0))
const notNegative = v.pipe(finite, v.minValue(0))
const share = v.pipe(finite, v.minValue(0), v.maxValue(1))
const text = v.pipe(v.string(), v.maxLength(2000))
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200))
const vector = v.strictTuple([finite, finite, finite])
const within = ({ min, max }: Limits) => v.pipe(finite, v.minValue(min), v.maxValue(max))

export const ItemSchema = v.object({
  id,
  name: text,
  group: v.picklist([
    'fasteners',
    'structure',
    'drive',
    'power',
    'electronics',
    'payload',
    'other',
  ]),
  quantity: v.pipe(notNegative, v.integer()),
  massG: notNegative,
  costEach: notNegative,
  status: v.picklist(['estimated', 'calculated', 'weighed']),
  basis: v.picklist(['published', 'computed', 'memory', 'typed']),
  positionMm: v.nullable(vector),
}) satisfies v.GenericSchema<unknown, Item>

export const GrowthSchema = v.object({
  estimatedPct: notNegative,
  calculatedPct: notNegative,
  weighedPct: notNegative,
}) satisfies v.GenericSchema<unknown, GrowthAllowance>

export const LimitSchema = v.nullable(positive)

export const MassLineSchema = v.object({
  id,
  name: text,
  thresholdG: positive,
  meaning: text,
  readOn: v.pipe(v.string(), v.isoDate()),
  source: text,
}) satisfies v.GenericSchema<unknown, MassLine>

export const PlaceSchema = v.object({
  partId: id,
  positionMm: vector,
  rotateDeg: vector,
  mirrored: v.boolean(),
}) satisfies v.GenericSchema<unknown, Place>

const FlownSchema = v.object({
  minutes: within(FLIGHT_LIMITS.flownMin),
  usedWh: positive,
  auwG: positive,
  motors: v.pipe(positive, v.integer(), v.maxValue(16)),
  propDiameterMm: positive,
}) satisfies v.GenericSchema<unknown, FlownHover>

export const FlightSchema = v.object({
  motors: v.pipe(positive, v.integer(), v.maxValue(16)),
  motorThrustG: positive,
  propDiameterMm: positive,
  packCells: v.pipe(positive, v.integer(), v.maxValue(24)),
  packMah: positive,
  voltsPerCell: v.pipe(positive, v.maxValue(5)),
  usableShare: share,
  avionicsW: notNegative,
  motorRadiusMm: notNegative,
  blades: v.exactOptional(v.picklist([2, 3, 4])),
  flown: v.exactOptional(FlownSchema),
}) satisfies v.GenericSchema<unknown, FlightSetup>

export const WingSchema = v.object({
  areaDm2: positive,
  spanMm: v.exactOptional(within(WING_LIMITS.spanMm)),
  cruiseMS: v.exactOptional(within(WING_LIMITS.cruiseMS)),
  dragCoefficient: v.exactOptional(within(WING_LIMITS.dragCoefficient)),
  meanChordMm: positive,
  leadingEdgeMm: finite,
  balanceMm: v.strictTuple([finite, finite]),
}) satisfies v.GenericSchema<unknown, WingSetup>

export const TwinSchema = v.object({
  plate: v.picklist(['carbon', 'g10', 'plywood', 'aluminium']),
  thicknessMm: v.record(id, positive),
  freeMm: v.exactOptional(v.record(id, positive)),
  platePricePerDm2: notNegative,
  cutPricePerM: notNegative,
  deliveryDays: notNegative,
}) satisfies v.GenericSchema<unknown, TwinSetup>

export const SeasonSchema = v.object({
  flights: notNegative,
  crashesPerFlight: notNegative,
  breakShare: v.record(id, share),
  carbonLeadDays: notNegative,
  carbonPartPrice: notNegative,
  carbonBreakFactor: v.exactOptional(notNegative),
}) satisfies v.GenericSchema<unknown, SeasonSetup>
