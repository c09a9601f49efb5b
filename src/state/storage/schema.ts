import * as v from 'valibot'
import {
  CARBON_LIMITS,
  DRILL_LIMITS,
  HABIT_LIMITS,
  HOLE_USES_MOST,
  JOINT_LIMITS,
  MATERIAL_LIMITS,
  PIECES_LIMITS,
  PLACE_LIMITS,
  PRICE_LIMITS,
  PRINTER_LIMITS,
  PRINTER_MORE_LIMITS,
  READING_LIMITS,
  RUN_LIMITS,
  SPOOL_LIMITS,
  RECIPE_LIMITS,
  TEXT_LIMITS,
  TURN_LIMITS,
  ZONE_PCT_LIMITS,
  ZONES_MOST,
  times,
  type Limits,
  type PrinterNumber,
  type RecipeNumber,
} from '../../core/data/limits.ts'
import { MOST_RUN_PIECES } from '../../core/data/runs.ts'
import { JOINT_THREADS } from '../../core/model/joints.ts'
import type { RunSettings, Spot } from '../../core/model/runs.ts'
import type { Spool } from '../../core/model/spools.ts'
import type {
  Material,
  Prices,
  Printer,
  PrinterMore,
  SourceMark,
} from '../../core/model/figures.ts'
import type { ChosenUse, HoleReading } from '../../core/model/drill.ts'
import type { DrawnPlace } from '../../core/model/aircraft.ts'
import type {
  CarbonFrame,
  OwnRole,
  Part,
  RoleId,
  Variant,
  WeighIn,
} from '../../core/model/frame.ts'
import type { HabitNumber, KnownHabits } from '../../core/model/habits.ts'
import type { ClockTime, LaidReading, WholeWeighing } from '../../core/model/readings.ts'
import type { LengthUnit } from '../../core/model/mesh.ts'
import type { Pattern } from '../../core/model/settings.ts'

/*
 * What a frame from outside (a project file, storage, a demo) must look like. Stated part by part, so that one damaged
 * part does not take the others with it. Each schema is checked against the type it stands for.
 */

const upTo = (letters: number) => v.pipe(v.string(), v.maxLength(letters))
const name = upTo(TEXT_LIMITS.name)
const path = upTo(TEXT_LIMITS.path)
const id = v.pipe(v.string(), v.minLength(1), v.maxLength(TEXT_LIMITS.id))
const finite = v.pipe(v.number(), v.finite())
const positive = v.pipe(finite, v.gtValue(0))

/** The range a number must lie in, as a schema. */
export function within({ min, max, whole }: Limits): v.GenericSchema<number> {
  const range = v.pipe(finite, v.minValue(min), v.maxValue(max))
  return whole ? v.pipe(range, v.integer()) : range
}
const quantity = within(PIECES_LIMITS.quantity)
const spares = within(PIECES_LIMITS.spares)

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

const recipeNumber = (key: RecipeNumber) => within(RECIPE_LIMITS[key])

/** Those that are known; see `HABIT_FIELDS`. */
const HabitsSchema = v.object({
  ...(Object.fromEntries(
    Object.entries(HABIT_LIMITS).map(([key, limits]) => [key, v.exactOptional(within(limits))]),
  ) as Record<HabitNumber, v.ExactOptionalSchema<v.GenericSchema<number>, undefined>>),
  bead: v.exactOptional(v.picklist(['square', 'round'])),
  thinWalls: v.exactOptional(v.picklist(['whole', 'varied'])),
  gapLines: v.exactOptional(v.boolean()),
  undersides: v.exactOptional(v.picklist(['bottom', 'most'])),
}) satisfies v.GenericSchema<unknown, KnownHabits>

export const RecipeSchema = v.object({
  layerMm: recipeNumber('layerMm'),
  firstLayerMm: recipeNumber('firstLayerMm'),
  lineMm: recipeNumber('lineMm'),
  walls: recipeNumber('walls'),
  topSkins: recipeNumber('topSkins'),
  bottomSkins: recipeNumber('bottomSkins'),
  infillPct: recipeNumber('infillPct'),
  supportAngleDeg: recipeNumber('supportAngleDeg'),
  brimMm: recipeNumber('brimMm'),
  pattern: v.picklist(PATTERNS),
  supports: v.boolean(),
  // Of a piece that is laid in one way whatever the printer's habits.
  habits: v.exactOptional(HabitsSchema),
})

export const PiecesSchema = quantity
export const SparesSchema = spares
export const UnitSchema = v.picklist(UNITS)
export const RoleIdSchema = v.picklist(ROLE_IDS)
const vector = v.strictTuple([finite, finite, finite])
const turn = within(TURN_LIMITS)
const PoseSchema = v.object({ rotateDeg: v.strictTuple([turn, turn, turn]) })

const DrawnPlaceSchema = v.object({
  position: vector,
  rotateDeg: vector,
  mirrored: v.boolean(),
}) satisfies v.GenericSchema<unknown, DrawnPlace>

const HashSchema = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'must be a SHA-256 in hex'))
const zonePct = within(ZONE_PCT_LIMITS)
const ZonesSchema = v.pipe(
  v.array(v.object({ fileName: path, meshHash: HashSchema, infillPct: zonePct })),
  v.maxLength(ZONES_MOST),
)

export const WeighInSchema = v.object({
  // Of one piece: a share of what the scale showed.
  massG: v.pipe(positive, v.maxValue(READING_LIMITS.scaleG.max)),
  pieces: v.exactOptional(quantity),
  tareG: v.exactOptional(within(READING_LIMITS.tareG)),
  trusted: v.exactOptional(v.boolean()),
  stepG: v.nullable(positive),
  date: v.nullable(v.pipe(v.string(), v.isoDate())),
  of: v.object({
    meshHash: HashSchema,
    unit: UnitSchema,
    pose: PoseSchema,
    recipe: RecipeSchema,
    zones: v.array(v.object({ meshHash: HashSchema, infillPct: zonePct })),
    materialId: id,
    flow: within(MATERIAL_LIMITS.flow),
    printerId: id,
  }),
  calculatedG: v.nullable(positive),
}) satisfies v.GenericSchema<unknown, WeighIn>

const threads = v.picklist(JOINT_THREADS)
const place = within(PLACE_LIMITS.positionMm)
const HoleUseSchema = v.variant('kind', [
  v.object({ kind: v.picklist(['screw', 'tapped', 'insert']), thread: threads }),
  v.object({
    kind: v.literal('damper'),
    neckMm: within(DRILL_LIMITS.neckMm),
    grooveMm: v.nullable(within(DRILL_LIMITS.grooveMm)),
  }),
  v.object({ kind: v.literal('shaft'), shaftMm: within(DRILL_LIMITS.shaftMm) }),
  v.object({ kind: v.literal('none') }),
])
const ChosenUsesSchema = v.pipe(
  v.array(
    v.object({
      centreMm: v.strictTuple([place, place, place]),
      diameterMm: within(JOINT_LIMITS.diameterMm),
      use: HoleUseSchema,
    }),
  ),
  v.maxLength(HOLE_USES_MOST),
) satisfies v.GenericSchema<unknown, readonly ChosenUse[]>

/** Without its weigh-in, which is checked by itself: a damaged one costs no part. */
export const PartSchema = v.pipe(
  v.object({
    id,
    name,
    fileName: path,
    meshHash: HashSchema,
    unit: UnitSchema,
    quantity,
    spares,
    mirrored: spares,
    materialId: id,
    recipe: RecipeSchema,
    role: v.nullable(RoleIdSchema),
    ownRole: v.exactOptional(id),
    pose: PoseSchema,
    note: upTo(TEXT_LIMITS.note),
    zones: ZonesSchema,
    drawnPlaces: v.exactOptional(v.array(DrawnPlaceSchema)),
    keepsHairs: v.exactOptional(v.boolean()),
    countsFully: v.exactOptional(v.boolean()),
    holeUses: v.exactOptional(ChosenUsesSchema),
  }),
  v.check((part) => part.mirrored <= part.quantity, 'has more mirrored copies than copies'),
) satisfies v.GenericSchema<unknown, Part>

export const OwnRoleSchema = v.object({
  id,
  name: v.pipe(name, v.minLength(1)),
  duty: v.nullable(RoleIdSchema),
  recipe: RecipeSchema,
}) satisfies v.GenericSchema<unknown, OwnRole>

export const VariantSchema = v.object({
  id,
  name,
  ways: v.record(id, v.object({ recipe: RecipeSchema, materialId: id })),
}) satisfies v.GenericSchema<unknown, Variant>

const sourced = (value: v.GenericSchema<number>) =>
  v.object({ value, mark: v.picklist(MARKS), source: upTo(TEXT_LIMITS.words) })

export const MaterialSchema = v.object({
  id,
  name,
  densityGCm3: sourced(within(MATERIAL_LIMITS.densityGCm3)),
  // The ends lie a little outside the density itself.
  densityRangeGCm3: v.strictTuple([positive, positive]),
  densityTyped: v.boolean(),
  pricePerKg: sourced(within(MATERIAL_LIMITS.pricePerKg)),
  diameterMm: within(MATERIAL_LIMITS.diameterMm),
  flow: within(MATERIAL_LIMITS.flow),
  youngsGPa: sourced(within(MATERIAL_LIMITS.youngsGPa)),
  strengthInPlaneMPa: sourced(within(MATERIAL_LIMITS.strengthMPa)),
  strengthAcrossMPa: sourced(within(MATERIAL_LIMITS.strengthMPa)),
  heatLimitC: sourced(within(MATERIAL_LIMITS.heatLimitC)),
  shrinkagePct: sourced(within(MATERIAL_LIMITS.shrinkagePct)),
  nozzleC: sourced(within(MATERIAL_LIMITS.nozzleC)),
  bedC: sourced(within(MATERIAL_LIMITS.bedC)),
}) satisfies v.GenericSchema<unknown, Material>

const { bedMm: bedLimits, clockFactor: clockLimits, ...speeds } = PRINTER_LIMITS
const bed = within(bedLimits)

export const PrinterSchema = v.object({
  id,
  name,
  ...(Object.fromEntries(
    Object.entries(speeds).map(([key, limits]) => [key, within(limits)]),
  ) as Record<Exclude<PrinterNumber, 'bedMm' | 'clockFactor'>, v.GenericSchema<number>>),
  ...(Object.fromEntries(
    Object.entries(PRINTER_MORE_LIMITS).map(([key, limits]) => [
      key,
      v.exactOptional(within(limits)),
    ]),
  ) as Record<keyof PrinterMore, v.ExactOptionalSchema<v.GenericSchema<number>, undefined>>),
  clockFactor: v.nullable(within(clockLimits)),
  bedMm: v.strictTuple([bed, bed, bed]),
  habits: v.exactOptional(HabitsSchema),
}) satisfies v.GenericSchema<unknown, Printer>

export const PricesSchema = v.object({
  currency: v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'must be three capital letters')),
  electricityPerKwh: within(PRICE_LIMITS.electricityPerKwh),
  wearPerHour: within(PRICE_LIMITS.wearPerHour),
  wastePct: within(PRICE_LIMITS.wastePct),
  failurePctPerHour: within(PRICE_LIMITS.failurePctPerHour),
}) satisfies v.GenericSchema<unknown, Prices>

export const CarbonSchema = v.object({
  massG: within(CARBON_LIMITS.massG),
  price: within(CARBON_LIMITS.price),
}) satisfies v.GenericSchema<unknown, CarbonFrame>

const day = v.nullable(v.pipe(v.string(), v.isoDate()))

export const WholesSchema = v.array(
  v.object({
    id,
    of: v.picklist(['printed', 'all-up']),
    scaleG: within(READING_LIMITS.scaleG),
    tareG: within(READING_LIMITS.tareG),
    stepG: positive,
    date: day,
    calculatedG: positive,
    trusted: v.boolean(),
  }),
) satisfies v.GenericSchema<unknown, readonly WholeWeighing[]>

export const ClocksSchema = v.array(
  v.object({
    id,
    pieces: v.record(id, quantity),
    timeS: within(times(READING_LIMITS.clockMin, 60)),
    calculatedS: positive,
    date: day,
    trusted: v.boolean(),
    beside: v.exactOptional(v.literal(true)),
    printerId: v.exactOptional(id),
  }),
) satisfies v.GenericSchema<unknown, readonly ClockTime[]>

export const LaidSchema = v.array(
  v.object({
    id,
    partId: id,
    fileName: path,
    depositMm3: positive,
    calculatedMm3: positive,
    timeS: positive,
    calculatedS: positive,
    date: day,
    trusted: v.boolean(),
  }),
) satisfies v.GenericSchema<unknown, readonly LaidReading[]>

export const HoleReadingsSchema = v.array(
  v.object({
    id,
    printerId: id,
    materialId: id,
    lies: v.picklist(['upright', 'level']),
    drawnMm: within(JOINT_LIMITS.diameterMm),
    measuredMm: within(DRILL_LIMITS.measuredMm),
    by: v.picklist(['pin', 'calliper']),
    date: day,
  }),
) satisfies v.GenericSchema<unknown, readonly HoleReading[]>

const SpotSchema = v.object({
  partId: id,
  xMm: within(RUN_LIMITS.spotMm),
  yMm: within(RUN_LIMITS.spotMm),
  turnDeg: within(RUN_LIMITS.turnDeg),
  mirrored: v.exactOptional(v.literal(true)),
  printerId: v.exactOptional(id),
}) satisfies v.GenericSchema<unknown, Spot>

export const RunsSchema = v.object({
  way: v.picklist(['fewest beds', 'evenings', 'least loss']),
  order: v.picklist(['together', 'one at a time']),
  gapMm: within(RUN_LIMITS.gapMm),
  marginMm: within(RUN_LIMITS.marginMm),
  eveningH: within(RUN_LIMITS.eveningH),
  headMm: within(RUN_LIMITS.headMm),
  underHeadMm: within(RUN_LIMITS.underHeadMm),
  byHand: v.exactOptional(
    v.pipe(
      v.array(v.pipe(v.array(SpotSchema), v.maxLength(MOST_RUN_PIECES))),
      v.maxLength(MOST_RUN_PIECES),
    ),
  ),
  coupons: v.exactOptional(v.pipe(v.array(id), v.maxLength(MOST_RUN_PIECES))),
}) satisfies v.GenericSchema<unknown, RunSettings>

export const SpoolSchema = v.object({
  id,
  materialId: id,
  grossG: within(SPOOL_LIMITS.grossG),
  emptyG: within(SPOOL_LIMITS.emptyG),
}) satisfies v.GenericSchema<unknown, Spool>

export const NameSchema = name

/** The outside of a frame, its contents still unchecked. */
export const FrameShellSchema = v.object({
  version: v.literal(8),
  id,
  name: v.unknown(),
  parts: v.array(v.unknown()),
  materials: v.array(v.unknown()),
  roles: v.optional(v.array(v.unknown())),
  variants: v.optional(v.array(v.unknown())),
  printer: v.unknown(),
  printers: v.optional(v.array(v.unknown())),
  prices: v.unknown(),
  carbon: v.unknown(),
  aircraft: v.unknown(),
  wholes: v.optional(v.unknown()),
  clocks: v.optional(v.unknown()),
  holeReadings: v.optional(v.unknown()),
  laid: v.optional(v.unknown()),
  runs: v.optional(v.unknown()),
})
