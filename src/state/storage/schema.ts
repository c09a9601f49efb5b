import * as v from 'valibot'
import {
  MATERIAL_LIMITS,
  PRICE_LIMITS,
  RECIPE_LIMITS,
  type Limits,
  type RecipeNumber,
} from '../../core/data/limits.ts'
import type { Material, Prices, Printer, SourceMark } from '../../core/model/figures.ts'
import type { DrawnPlace } from '../../core/model/aircraft.ts'
import type { CarbonFrame, Part, RoleId, WeighIn } from '../../core/model/frame.ts'
import type { ClockTime, WholeWeighing } from '../../core/model/readings.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import { RECIPE_DEFAULTS } from '../../core/model/settings.ts'
import type { Pattern } from '../../core/model/settings.ts'

/*
 * What a frame from outside (a project file, storage, a demo) must look like. Stated part by part, so that one damaged
 * part does not take the others with it. Each schema is checked against the type it stands for.
 */

const MAX_TEXT = 10_000
const text = v.pipe(v.string(), v.maxLength(MAX_TEXT))
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(200))
const finite = v.pipe(v.number(), v.finite())
const notNegative = v.pipe(finite, v.minValue(0))
const positive = v.pipe(finite, v.gtValue(0))
const within = ({ min, max }: Limits) => v.pipe(finite, v.minValue(min), v.maxValue(max))
const pieces = (least: number) =>
  v.pipe(v.number(), v.integer(), v.minValue(least), v.maxValue(9999))

const PATTERNS = [
  'lines',
  'grid',
  'triangles',
  'honeycomb',
  'gyroid',
] as const satisfies readonly Pattern[]
const ROLE_IDS = ['arm', 'plate', 'mount', 'soft', 'wing-skin'] as const satisfies readonly RoleId[]
const UNITS = [
  'micron',
  'millimetre',
  'centimetre',
  'inch',
  'foot',
  'metre',
] as const satisfies readonly LengthUnit[]
const MARKS = [
  'read',
  'derived',
  'memory',
  'weak',
  'common practice',
  'user',
] as const satisfies readonly SourceMark[]

function recipeNumber(key: RecipeNumber) {
  const { min, max, whole } = RECIPE_LIMITS[key]
  return v.pipe(
    finite,
    v.minValue(min),
    v.maxValue(max),
    v.check((value) => !whole || Number.isInteger(value), 'must be a whole number'),
  )
}

export const RecipeSchema = v.object({
  layerMm: recipeNumber('layerMm'),
  firstLayerMm: recipeNumber('firstLayerMm'),
  lineMm: recipeNumber('lineMm'),
  walls: recipeNumber('walls'),
  topSkins: recipeNumber('topSkins'),
  bottomSkins: recipeNumber('bottomSkins'),
  infillPct: recipeNumber('infillPct'),
  // Came later; a frame without it has no zone either.
  zonePct: v.optional(recipeNumber('zonePct'), RECIPE_DEFAULTS.zonePct),
  supportAngleDeg: recipeNumber('supportAngleDeg'),
  brimMm: recipeNumber('brimMm'),
  pattern: v.picklist(PATTERNS),
  supports: v.boolean(),
})

export const PiecesSchema = pieces(1)
export const UnitSchema = v.picklist(UNITS)
export const RoleIdSchema = v.picklist(ROLE_IDS)
const vector = v.strictTuple([finite, finite, finite])
const PoseSchema = v.object({ rotateDeg: vector })

const DrawnPlaceSchema = v.object({
  position: vector,
  rotateDeg: vector,
  mirrored: v.boolean(),
}) satisfies v.GenericSchema<unknown, DrawnPlace>

const HashSchema = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'must be a SHA-256 in hex'))
const ZoneSchema = v.object({ fileName: text, meshHash: HashSchema })

export const WeighInSchema = v.object({
  massG: positive,
  pieces: v.exactOptional(pieces(1)),
  tareG: v.exactOptional(notNegative),
  trusted: v.exactOptional(v.boolean()),
  stepG: v.nullable(positive),
  date: v.nullable(v.pipe(v.string(), v.isoDate())),
  of: v.object({
    meshHash: HashSchema,
    unit: UnitSchema,
    pose: PoseSchema,
    recipe: RecipeSchema,
    zoneHash: v.nullable(HashSchema),
    materialId: id,
    flow: positive,
    printerId: id,
  }),
  calculatedG: v.nullable(positive),
}) satisfies v.GenericSchema<unknown, WeighIn>

/** Without its weigh-in, which is checked by itself: a damaged one costs no part. */
export const PartSchema = v.pipe(
  v.object({
    id,
    name: text,
    fileName: text,
    meshHash: HashSchema,
    unit: UnitSchema,
    quantity: PiecesSchema,
    spares: pieces(0),
    mirrored: pieces(0),
    materialId: id,
    recipe: RecipeSchema,
    role: v.nullable(RoleIdSchema),
    pose: PoseSchema,
    note: text,
    zone: v.optional(v.nullable(ZoneSchema), null),
    drawnPlaces: v.exactOptional(v.array(DrawnPlaceSchema)),
    keepsHairs: v.exactOptional(v.boolean()),
  }),
  v.check((part) => part.mirrored <= part.quantity, 'has more mirrored copies than copies'),
) satisfies v.GenericSchema<unknown, Part>

const sourced = (value: v.GenericSchema<number>) =>
  v.object({ value, mark: v.picklist(MARKS), source: text })

export const MaterialSchema = v.object({
  id,
  name: text,
  densityGCm3: sourced(positive),
  densityRangeGCm3: v.strictTuple([positive, positive]),
  densityTyped: v.boolean(),
  pricePerKg: sourced(notNegative),
  diameterMm: positive,
  flow: v.pipe(positive, v.maxValue(2)),
  youngsGPa: sourced(notNegative),
  strengthInPlaneMPa: sourced(notNegative),
  strengthAcrossMPa: sourced(notNegative),
  heatLimitC: sourced(finite),
  shrinkagePct: sourced(notNegative),
  nozzleC: sourced(within(MATERIAL_LIMITS.nozzleC)),
  bedC: sourced(within(MATERIAL_LIMITS.bedC)),
}) satisfies v.GenericSchema<unknown, Material>

export const PrinterSchema = v.object({
  id,
  name: text,
  wallMmS: positive,
  skinMmS: positive,
  infillMmS: positive,
  firstLayerMmS: positive,
  travelMmS: positive,
  accelMmS2: positive,
  wallAccelMmS2: positive,
  travelAccelMmS2: positive,
  cornerMmS: positive,
  flowMm3S: positive,
  layerChangeS: notNegative,
  retractS: notNegative,
  leastLayerS: notNegative,
  clockFactor: v.nullable(positive),
  startS: notNegative,
  powerW: notNegative,
  bedMm: v.strictTuple([positive, positive, positive]),
}) satisfies v.GenericSchema<unknown, Printer>

export const PricesSchema = v.object({
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'must be three capital letters')),
  electricityPerKwh: notNegative,
  wearPerHour: notNegative,
  wastePct: v.pipe(notNegative, v.maxValue(100)),
  failurePctPerHour: within(PRICE_LIMITS.failurePctPerHour),
}) satisfies v.GenericSchema<unknown, Prices>

export const CarbonSchema = v.object({
  massG: notNegative,
  price: notNegative,
}) satisfies v.GenericSchema<unknown, CarbonFrame>

const day = v.nullable(v.pipe(v.string(), v.isoDate()))

export const WholesSchema = v.array(
  v.object({
    id,
    of: v.picklist(['printed', 'all-up']),
    scaleG: positive,
    tareG: notNegative,
    stepG: positive,
    date: day,
    calculatedG: positive,
    trusted: v.boolean(),
  }),
) satisfies v.GenericSchema<unknown, readonly WholeWeighing[]>

export const ClocksSchema = v.array(
  v.object({
    id,
    pieces: v.record(id, pieces(1)),
    timeS: positive,
    calculatedS: positive,
    date: day,
    trusted: v.boolean(),
  }),
) satisfies v.GenericSchema<unknown, readonly ClockTime[]>

/** The outside of a frame, its contents still unchecked. */
export const FrameShellSchema = v.object({
  version: v.literal(4),
  id,
  name: text,
  parts: v.array(v.unknown()),
  materials: v.array(v.unknown()),
  printer: v.unknown(),
  prices: v.unknown(),
  carbon: v.unknown(),
  aircraft: v.unknown(),
  wholes: v.optional(v.unknown()),
  clocks: v.optional(v.unknown()),
})
