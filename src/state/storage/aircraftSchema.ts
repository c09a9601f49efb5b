import * as v from 'valibot'
import {
  BODY_LIMITS,
  FLIGHT_LIMITS,
  GROWTH_LIMITS,
  ITEM_LIMITS,
  JOINT_BORES_MOST,
  JOINT_LIMITS,
  MASS_LIMITS,
  PLACE_LIMITS,
  SEASON_LIMITS,
  TEXT_LIMITS,
  TURN_LIMITS,
  TWIN_LIMITS,
  WING_LIMITS,
} from '../../core/data/limits.ts'
import { ITEM_GROUPS, MASS_BASES, MASS_STATUSES } from '../../core/data/itemKinds.ts'
import { JOINT_THREADS, type BoreMark, type Joint, type JointEnd } from '../../core/model/joints.ts'
import type {
  FlightSetup,
  FlownHover,
  GrowthAllowance,
  Item,
  ItemBody,
  MassLine,
  Place,
  SeasonSetup,
  TwinSetup,
  WingSetup,
} from '../../core/model/aircraft.ts'
import { within } from './schema.ts'

const positive = v.pipe(v.number(), v.finite(), v.gtValue(0))
const name = v.pipe(v.string(), v.maxLength(TEXT_LIMITS.name))
const words = v.pipe(v.string(), v.maxLength(TEXT_LIMITS.words))
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(TEXT_LIMITS.id))
const position = within(PLACE_LIMITS.positionMm)
const vector = v.strictTuple([position, position, position])
const turn = within(TURN_LIMITS)
const chord = within(WING_LIMITS.leadingEdgeMm)

const threads = v.picklist(JOINT_THREADS)
const side = within(BODY_LIMITS.sizeMm)
const apart = within(BODY_LIMITS.patternMm)

const BodySchema = v.object({
  kind: v.picklist(['motor', 'board', 'camera', 'pack', 'prop', 'other']),
  sizeMm: v.strictTuple([side, side, side]),
  holes: v.nullable(
    v.object({
      layout: v.picklist(['rectangle', 'cross', 'sides']),
      aMm: apart,
      bMm: apart,
      thread: threads,
      depthMm: v.nullable(within(BODY_LIMITS.depthMm)),
    }),
  ),
  shaftMm: within(BODY_LIMITS.shaftMm),
}) satisfies v.GenericSchema<unknown, ItemBody>

export const ItemSchema = v.object({
  id,
  name,
  group: v.picklist(ITEM_GROUPS),
  quantity: within(ITEM_LIMITS.quantity),
  massG: within(ITEM_LIMITS.massG),
  costEach: within(ITEM_LIMITS.costEach),
  status: v.picklist(MASS_STATUSES),
  basis: v.picklist(MASS_BASES),
  positionMm: v.nullable(vector),
  boltPattern: v.exactOptional(name),
  body: v.exactOptional(BodySchema),
}) satisfies v.GenericSchema<unknown, Item>

export const GrowthSchema = v.object({
  estimatedPct: within(GROWTH_LIMITS),
  calculatedPct: within(GROWTH_LIMITS),
  weighedPct: within(GROWTH_LIMITS),
}) satisfies v.GenericSchema<unknown, GrowthAllowance>

export const LimitSchema = v.nullable(within(MASS_LIMITS.limitG))

export const MassLineSchema = v.object({
  id,
  name,
  thresholdG: within(MASS_LIMITS.thresholdG),
  meaning: words,
  readOn: v.pipe(v.string(), v.isoDate()),
  source: words,
}) satisfies v.GenericSchema<unknown, MassLine>

export const PlaceSchema = v.object({
  partId: id,
  positionMm: vector,
  rotateDeg: v.strictTuple([turn, turn, turn]),
  mirrored: v.boolean(),
}) satisfies v.GenericSchema<unknown, Place>

const along = within(JOINT_LIMITS.direction)
const direction = v.strictTuple([along, along, along])

const BoreMarkSchema = v.object({
  kind: v.picklist(['bore', 'peg']),
  centreMm: vector,
  axis: direction,
  diameterMm: within(JOINT_LIMITS.diameterMm),
  depthMm: within(JOINT_LIMITS.depthMm),
  openLow: v.boolean(),
  openHigh: v.boolean(),
}) satisfies v.GenericSchema<unknown, BoreMark>

const JointEndSchema = v.object({
  partId: id,
  piece: within(JOINT_LIMITS.piece),
  bores: v.pipe(v.array(BoreMarkSchema), v.maxLength(JOINT_BORES_MOST)),
  face: v.nullable(v.object({ pointMm: vector, normal: direction })),
}) satisfies v.GenericSchema<unknown, JointEnd>

export const JointSchema = v.object({
  id,
  a: JointEndSchema,
  b: JointEndSchema,
  kind: v.picklist(['bores', 'shaft', 'faces', 'drawn']),
  mirrored: v.boolean(),
  turnDeg: turn,
  slideMm: within(JOINT_LIMITS.slideMm),
  gapMm: within(JOINT_LIMITS.gapMm),
  fastener: v.nullable(
    v.object({
      thread: threads,
      end: v.picklist(['nut', 'insert', 'tapped', 'post', 'through']),
    }),
  ),
}) satisfies v.GenericSchema<unknown, Joint>

const FlownSchema = v.object({
  minutes: within(FLIGHT_LIMITS.flownMin),
  usedWh: positive,
  auwG: positive,
  motors: within(FLIGHT_LIMITS.motors),
  propDiameterMm: within(FLIGHT_LIMITS.propDiameterMm),
  coaxial: v.exactOptional(v.boolean()),
}) satisfies v.GenericSchema<unknown, FlownHover>

export const FlightSchema = v.object({
  motors: within(FLIGHT_LIMITS.motors),
  motorThrustG: within(FLIGHT_LIMITS.motorThrustG),
  propDiameterMm: within(FLIGHT_LIMITS.propDiameterMm),
  packCells: within(FLIGHT_LIMITS.packCells),
  packMah: within(FLIGHT_LIMITS.packMah),
  voltsPerCell: within(FLIGHT_LIMITS.voltsPerCell),
  usableShare: within(FLIGHT_LIMITS.usableShare),
  avionicsW: within(FLIGHT_LIMITS.avionicsW),
  motorRadiusMm: within(FLIGHT_LIMITS.motorRadiusMm),
  blades: v.exactOptional(v.picklist([2, 3, 4])),
  coaxial: v.exactOptional(v.boolean()),
  flown: v.exactOptional(FlownSchema),
}) satisfies v.GenericSchema<unknown, FlightSetup>

export const WingSchema = v.object({
  areaDm2: within(WING_LIMITS.areaDm2),
  spanMm: v.exactOptional(within(WING_LIMITS.spanMm)),
  cruiseMS: v.exactOptional(within(WING_LIMITS.cruiseMS)),
  dragCoefficient: v.exactOptional(within(WING_LIMITS.dragCoefficient)),
  meanChordMm: within(WING_LIMITS.meanChordMm),
  leadingEdgeMm: within(WING_LIMITS.leadingEdgeMm),
  balanceMm: v.strictTuple([chord, chord]),
  noseMm: v.exactOptional(position),
}) satisfies v.GenericSchema<unknown, WingSetup>

export const TwinSchema = v.object({
  plate: v.picklist(['carbon', 'g10', 'plywood', 'aluminium']),
  thicknessMm: v.record(id, within(TWIN_LIMITS.thicknessMm)),
  freeMm: v.exactOptional(v.record(id, within(TWIN_LIMITS.freeMm))),
  platePricePerDm2: within(TWIN_LIMITS.platePricePerDm2),
  cutPricePerM: within(TWIN_LIMITS.cutPricePerM),
  deliveryDays: within(TWIN_LIMITS.deliveryDays),
}) satisfies v.GenericSchema<unknown, TwinSetup>

export const SeasonSchema = v.object({
  flights: within(SEASON_LIMITS.flights),
  crashesPerFlight: within(SEASON_LIMITS.crashesPerFlight),
  breakShare: v.record(id, within(SEASON_LIMITS.breakShare)),
  carbonLeadDays: within(SEASON_LIMITS.carbonLeadDays),
  carbonPartPrice: within(SEASON_LIMITS.carbonPartPrice),
  carbonBreakFactor: v.exactOptional(within(SEASON_LIMITS.carbonBreakFactor)),
}) satisfies v.GenericSchema<unknown, SeasonSetup>
