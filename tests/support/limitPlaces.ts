import type { TEXT_LIMITS } from '../../src/core/data/limits.ts'
import type { Frame } from '../../src/core/model/frame.ts'
import type { Session } from '../../src/state/actions/types.ts'

/**
 * Where a number stands in a saved frame: keys from the outside in; `*` is the only key there is.
 */
export type Path = readonly [keyof Frame, ...(string | number)[]]

/** Where one row of the table of limits holds. */
export interface LimitPlace {
  /** Every place of the saved frame; none for what the page only reckons with. */
  readonly kept: readonly Path[]
  /** What is kept is so many times what the row says. */
  readonly keptTimes?: number
  /** Another way in than putting what is kept. */
  readonly act?: (actions: Session, frame: Frame, value: number) => void
  /** The command's own option; all else reaches it in a saved frame. */
  readonly command?: (value: number) => readonly string[]
  /**
   * Written in another way than `TABLE.row` where the page has its field; null for a number without
   * one.
   */
  readonly field?: string | null
}

const json =
  (option: string, key: string, more = '') =>
  (value: number) => [option, `{${more}"${key}":${value}}`]
const sourced = (key: string): LimitPlace => ({ kept: [['materials', 0, key, 'value']] })
const inMaterial = (key: string): LimitPlace => ({ kept: [['materials', 0, key]] })
const aircraft = (...keys: readonly (string | number)[]): LimitPlace => ({
  kept: [['aircraft', ...keys]],
})
const drafted: LimitPlace = { kept: [] }

const recipe = (key: string): LimitPlace => ({
  kept: [
    ['parts', 0, 'recipe', key],
    ['roles', 0, 'recipe', key],
    ['variants', 0, 'ways', '*', 'recipe', key],
  ],
  command: json('--recipe', key),
})
const printer = (key: string): LimitPlace => ({
  kept: [['printer', key]],
  command: json('--printer', key),
  field: 'PRINTER_LIMITS[key]',
})
const more = (key: string): LimitPlace => ({ ...printer(key), field: null })
const habit = (key: string): LimitPlace => ({
  kept: [['printer', 'habits', key]],
  command: json('--habits', key),
  field: 'HABIT_LIMITS[habit as HabitNumber]',
})
const wing = (key: string): LimitPlace => ({ ...aircraft('wing', key), field: 'WING_LIMITS[name]' })
/** Found on the mesh, or not yet typed anywhere. */
const inJoint = (...keys: readonly (string | number)[]): LimitPlace => ({
  ...aircraft('joints', 0, ...keys),
  field: null,
})
const axes = (...keys: readonly (string | number)[]): readonly Path[] =>
  [0, 1, 2].map((axis): Path => ['aircraft', ...keys, axis])

/** Every row of every table of `limits.ts`, by `TABLE.row`. */
export const LIMIT_PLACES: Readonly<Record<string, LimitPlace>> = {
  'RECIPE_LIMITS.layerMm': recipe('layerMm'),
  'RECIPE_LIMITS.firstLayerMm': recipe('firstLayerMm'),
  'RECIPE_LIMITS.lineMm': recipe('lineMm'),
  'RECIPE_LIMITS.walls': recipe('walls'),
  'RECIPE_LIMITS.topSkins': recipe('topSkins'),
  'RECIPE_LIMITS.bottomSkins': recipe('bottomSkins'),
  'RECIPE_LIMITS.infillPct': recipe('infillPct'),
  'RECIPE_LIMITS.supportAngleDeg': recipe('supportAngleDeg'),
  'RECIPE_LIMITS.brimMm': recipe('brimMm'),
  ZONE_PCT_LIMITS: {
    kept: [['parts', 0, 'zones', 0, 'infillPct']],
    command: (value) => ['--zone', `zone.stl=${value}`],
  },
  'PIECES_LIMITS.quantity': {
    kept: [
      ['parts', 0, 'quantity'],
      ['parts', 1, 'weighIn', 'pieces'],
      ['clocks', 0, 'pieces', '*'],
    ],
    command: (value) => ['--quantity', String(value)],
  },
  'PIECES_LIMITS.spares': { kept: [['parts', 0, 'spares']] },
  'MATERIAL_LIMITS.densityGCm3': {
    ...sourced('densityGCm3'),
    command: json('--material', 'densityGCm3'),
  },
  'MATERIAL_LIMITS.pricePerKg': {
    ...sourced('pricePerKg'),
    command: json('--material', 'pricePerKg'),
  },
  'MATERIAL_LIMITS.diameterMm': {
    ...inMaterial('diameterMm'),
    command: json('--material', 'diameterMm'),
  },
  'MATERIAL_LIMITS.flow': {
    kept: [
      ['materials', 0, 'flow'],
      ['parts', 1, 'weighIn', 'of', 'flow'],
    ],
    command: json('--material', 'flow'),
  },
  'MATERIAL_LIMITS.youngsGPa': sourced('youngsGPa'),
  'MATERIAL_LIMITS.strengthMPa': {
    kept: [
      ['materials', 0, 'strengthInPlaneMPa', 'value'],
      ['materials', 0, 'strengthAcrossMPa', 'value'],
    ],
  },
  'MATERIAL_LIMITS.heatLimitC': sourced('heatLimitC'),
  'MATERIAL_LIMITS.shrinkagePct': { ...sourced('shrinkagePct'), field: null },
  'MATERIAL_LIMITS.nozzleC': { ...sourced('nozzleC'), command: json('--material', 'nozzleC') },
  'MATERIAL_LIMITS.bedC': { ...sourced('bedC'), command: json('--material', 'bedC') },
  'PRINTER_LIMITS.wallMmS': printer('wallMmS'),
  'PRINTER_LIMITS.skinMmS': printer('skinMmS'),
  'PRINTER_LIMITS.infillMmS': printer('infillMmS'),
  'PRINTER_LIMITS.firstLayerMmS': printer('firstLayerMmS'),
  'PRINTER_LIMITS.travelMmS': printer('travelMmS'),
  'PRINTER_LIMITS.accelMmS2': printer('accelMmS2'),
  'PRINTER_LIMITS.wallAccelMmS2': printer('wallAccelMmS2'),
  'PRINTER_LIMITS.travelAccelMmS2': printer('travelAccelMmS2'),
  'PRINTER_LIMITS.cornerMmS': printer('cornerMmS'),
  'PRINTER_LIMITS.flowMm3S': printer('flowMm3S'),
  'PRINTER_LIMITS.layerChangeS': printer('layerChangeS'),
  'PRINTER_LIMITS.retractS': printer('retractS'),
  'PRINTER_LIMITS.leastLayerS': printer('leastLayerS'),
  'PRINTER_LIMITS.startS': printer('startS'),
  'PRINTER_LIMITS.powerW': printer('powerW'),
  'PRINTER_MORE_LIMITS.outerWallMmS': more('outerWallMmS'),
  'PRINTER_MORE_LIMITS.smallLoopMmS': more('smallLoopMmS'),
  'PRINTER_MORE_LIMITS.gapMmS': more('gapMmS'),
  'PRINTER_MORE_LIMITS.topSkinMmS': more('topSkinMmS'),
  'PRINTER_MORE_LIMITS.strandMmS': more('strandMmS'),
  'PRINTER_MORE_LIMITS.floorMmS': more('floorMmS'),
  'PRINTER_LIMITS.bedMm': { kept: [0, 1, 2].map((axis): Path => ['printer', 'bedMm', axis]) },
  'PRINTER_LIMITS.clockFactor': { kept: [['printer', 'clockFactor']], field: null },
  'HABIT_LIMITS.outerWidthShare': habit('outerWidthShare'),
  'HABIT_LIMITS.innerWidthShare': habit('innerWidthShare'),
  'HABIT_LIMITS.skinWidthShare': habit('skinWidthShare'),
  'HABIT_LIMITS.infillWidthShare': habit('infillWidthShare'),
  'HABIT_LIMITS.firstWidthShare': habit('firstWidthShare'),
  'HABIT_LIMITS.oneLineBelow': habit('oneLineBelow'),
  'HABIT_LIMITS.overlapShare': habit('overlapShare'),
  'HABIT_LIMITS.smallRoomMm2': habit('smallRoomMm2'),
  'HABIT_LIMITS.holdMm': habit('holdMm'),
  'HABIT_LIMITS.slopeBandMm': habit('slopeBandMm'),
  'HABIT_LIMITS.strandShare': habit('strandShare'),
  'HABIT_LIMITS.joinedShare': habit('joinedShare'),
  'PRICE_LIMITS.electricityPerKwh': { kept: [['prices', 'electricityPerKwh']] },
  'PRICE_LIMITS.wearPerHour': { kept: [['prices', 'wearPerHour']] },
  'PRICE_LIMITS.wastePct': { kept: [['prices', 'wastePct']] },
  'PRICE_LIMITS.failurePctPerHour': { kept: [['prices', 'failurePctPerHour']] },
  'CARBON_LIMITS.massG': { kept: [['carbon', 'massG']] },
  'CARBON_LIMITS.price': { kept: [['carbon', 'price']] },
  'READING_LIMITS.scaleG': { kept: [['wholes', 0, 'scaleG']] },
  'READING_LIMITS.tareG': {
    kept: [['wholes', 0, 'tareG']],
    // A tare is less than what the scale shows.
    act: (actions, { wholes = [] }, tareG) => {
      const scaleG = 1_000_000
      actions.putReadings({ wholes: wholes.map((each) => ({ ...each, scaleG, tareG })) }, 'weigh')
    },
  },
  'READING_LIMITS.clockMin': { kept: [['clocks', 0, 'timeS']], keptTimes: 60 },
  'RUN_LIMITS.gapMm': { kept: [['runs', 'gapMm']] },
  'RUN_LIMITS.marginMm': { kept: [['runs', 'marginMm']] },
  'RUN_LIMITS.eveningH': { kept: [['runs', 'eveningH']] },
  'RUN_LIMITS.headMm': { kept: [['runs', 'headMm']] },
  'RUN_LIMITS.underHeadMm': { kept: [['runs', 'underHeadMm']] },
  'RUN_LIMITS.spotMm': {
    kept: ['xMm', 'yMm'].map((key): Path => ['runs', 'byHand', 0, 0, key]),
  },
  'RUN_LIMITS.turnDeg': { kept: [['runs', 'byHand', 0, 0, 'turnDeg']] },
  'SPOOL_LIMITS.grossG': drafted,
  'SPOOL_LIMITS.emptyG': drafted,
  'ITEM_LIMITS.quantity': aircraft('items', 0, 'quantity'),
  'ITEM_LIMITS.massG': aircraft('items', 0, 'massG'),
  'ITEM_LIMITS.costEach': aircraft('items', 0, 'costEach'),
  GROWTH_LIMITS: {
    kept: ['estimatedPct', 'calculatedPct', 'weighedPct'].map((key): Path => [
      'aircraft',
      'growth',
      key,
    ]),
  },
  'MASS_LIMITS.limitG': {
    kept: [
      ['aircraft', 'limitG'],
      ['aircraft', 'printedLimitG'],
    ],
  },
  'MASS_LIMITS.thresholdG': aircraft('massLines', 0, 'thresholdG'),
  // A search is asked, not kept.
  'FIND_LIMITS.lessG': drafted,
  'FIND_LIMITS.hours': drafted,
  'FIND_LIMITS.cost': drafted,
  'FIND_LIMITS.stiffness': drafted,
  'FIND_LIMITS.deflectionMm': drafted,
  'FIND_LIMITS.firstHz': drafted,
  'FIND_LIMITS.most': { kept: [], field: null },
  'PLACE_LIMITS.positionMm': {
    kept: [
      ...axes('places', 0, 'positionMm'),
      ...axes('items', 0, 'positionMm'),
      ...[0, 1, 2].map((k): Path => ['parts', 0, 'holeUses', 0, 'centreMm', k]),
      ['aircraft', 'wing', 'noseMm'],
      ...axes('joints', 0, 'a', 'bores', 0, 'centreMm'),
      ...axes('joints', 0, 'a', 'face', 'pointMm'),
    ],
  },
  'PLACE_LIMITS.radiusMm': drafted,
  'BODY_LIMITS.sizeMm': { kept: axes('items', 0, 'body', 'sizeMm') },
  'BODY_LIMITS.patternMm': {
    kept: ['aMm', 'bMm'].map((key): Path => ['aircraft', 'items', 0, 'body', 'holes', key]),
  },
  'BODY_LIMITS.depthMm': aircraft('items', 0, 'body', 'holes', 'depthMm'),
  'BODY_LIMITS.shaftMm': aircraft('items', 0, 'body', 'shaftMm'),
  'JOINT_LIMITS.piece': inJoint('a', 'piece'),
  'JOINT_LIMITS.direction': {
    kept: [
      ...axes('joints', 0, 'a', 'bores', 0, 'axis'),
      ...axes('joints', 0, 'b', 'face', 'normal'),
    ],
    field: null,
  },
  'JOINT_LIMITS.diameterMm': {
    kept: [
      ['aircraft', 'joints', 0, 'a', 'bores', 0, 'diameterMm'],
      ['parts', 0, 'holeUses', 0, 'diameterMm'],
      ['holeReadings', 0, 'drawnMm'],
    ],
    field: null,
  },
  'JOINT_LIMITS.depthMm': inJoint('b', 'bores', 0, 'depthMm'),
  'JOINT_LIMITS.slideMm': aircraft('joints', 0, 'slideMm'),
  'JOINT_LIMITS.gapMm': aircraft('joints', 0, 'gapMm'),
  'LOAD_LIMITS.loadN': drafted,
  TURN_LIMITS: {
    kept: [...axes('places', 0, 'rotateDeg'), ['aircraft', 'joints', 0, 'turnDeg']],
  },
  'FLIGHT_LIMITS.motors': {
    kept: [
      ['aircraft', 'flight', 'motors'],
      ['aircraft', 'flight', 'flown', 'motors'],
    ],
  },
  'FLIGHT_LIMITS.motorThrustG': aircraft('flight', 'motorThrustG'),
  'FLIGHT_LIMITS.propDiameterMm': {
    kept: [
      ['aircraft', 'flight', 'propDiameterMm'],
      ['aircraft', 'flight', 'flown', 'propDiameterMm'],
    ],
  },
  'FLIGHT_LIMITS.packCells': aircraft('flight', 'packCells'),
  'FLIGHT_LIMITS.packMah': aircraft('flight', 'packMah'),
  'FLIGHT_LIMITS.voltsPerCell': aircraft('flight', 'voltsPerCell'),
  'FLIGHT_LIMITS.usableShare': aircraft('flight', 'usableShare'),
  'FLIGHT_LIMITS.avionicsW': aircraft('flight', 'avionicsW'),
  'FLIGHT_LIMITS.motorRadiusMm': aircraft('flight', 'motorRadiusMm'),
  'FLIGHT_LIMITS.flownMin': aircraft('flight', 'flown', 'minutes'),
  // What is kept of it is the energy.
  'FLIGHT_LIMITS.usedShare': drafted,
  'WING_LIMITS.areaDm2': aircraft('wing', 'areaDm2'),
  'WING_LIMITS.spanMm': wing('spanMm'),
  'WING_LIMITS.cruiseMS': wing('cruiseMS'),
  'WING_LIMITS.dragCoefficient': wing('dragCoefficient'),
  'WING_LIMITS.meanChordMm': aircraft('wing', 'meanChordMm'),
  'WING_LIMITS.leadingEdgeMm': {
    kept: [
      ['aircraft', 'wing', 'leadingEdgeMm'],
      ['aircraft', 'wing', 'balanceMm', 0],
      ['aircraft', 'wing', 'balanceMm', 1],
    ],
  },
  'TWIN_LIMITS.thicknessMm': aircraft('twin', 'thicknessMm', '*'),
  'TWIN_LIMITS.freeMm': aircraft('twin', 'freeMm', '*'),
  'TWIN_LIMITS.platePricePerDm2': aircraft('twin', 'platePricePerDm2'),
  'TWIN_LIMITS.cutPricePerM': aircraft('twin', 'cutPricePerM'),
  'TWIN_LIMITS.deliveryDays': aircraft('twin', 'deliveryDays'),
  'SEASON_LIMITS.flights': aircraft('season', 'flights'),
  'SEASON_LIMITS.crashesPerFlight': aircraft('season', 'crashesPerFlight'),
  'SEASON_LIMITS.breakShare': aircraft('season', 'breakShare', '*'),
  'SEASON_LIMITS.carbonLeadDays': aircraft('season', 'carbonLeadDays'),
  'SEASON_LIMITS.carbonPartPrice': aircraft('season', 'carbonPartPrice'),
  'SEASON_LIMITS.carbonBreakFactor': aircraft('season', 'carbonBreakFactor'),
  'DRILL_LIMITS.neckMm': { kept: [['parts', 0, 'holeUses', 0, 'use', 'neckMm']] },
  'DRILL_LIMITS.grooveMm': { kept: [['parts', 0, 'holeUses', 0, 'use', 'grooveMm']] },
  'DRILL_LIMITS.shaftMm': { kept: [['parts', 0, 'holeUses', 1, 'use', 'shaftMm']] },
  'DRILL_LIMITS.measuredMm': { kept: [['holeReadings', 0, 'measuredMm']] },
  'HARDWARE_LIMITS.washers': drafted,
  'HARDWARE_LIMITS.bossMm': drafted,
  'HARDWARE_LIMITS.depthMm': drafted,
  'HARDWARE_LIMITS.layerMm': drafted,
  'HARDWARE_LIMITS.outerMm': drafted,
  'HARDWARE_LIMITS.innerMm': drafted,
  'HARDWARE_LIMITS.lengthMm': drafted,
  'PROP_LIMITS.thrustCoefficient': drafted,
  'PROP_LIMITS.rpm': drafted,
}

/** Every row of the table of letters, and where such texts stand in a saved frame. */
export const TEXT_PLACES: Readonly<Record<keyof typeof TEXT_LIMITS, readonly Path[]>> = {
  name: [
    ['name'],
    ['parts', 0, 'name'],
    ['materials', 0, 'name'],
    ['roles', 0, 'name'],
    ['printer', 'name'],
    ['aircraft', 'items', 0, 'name'],
    ['aircraft', 'items', 0, 'boltPattern'],
    ['aircraft', 'massLines', 0, 'name'],
    ['variants', 0, 'name'],
  ],
  words: [
    ['aircraft', 'massLines', 0, 'meaning'],
    ['aircraft', 'massLines', 0, 'source'],
    ['materials', 0, 'pricePerKg', 'source'],
  ],
  note: [['parts', 0, 'note']],
  path: [
    ['parts', 0, 'fileName'],
    ['parts', 0, 'zones', 0, 'fileName'],
  ],
  id: [
    ['parts', 0, 'materialId'],
    ['printer', 'id'],
    ['aircraft', 'items', 0, 'id'],
    ['holeReadings', 0, 'id'],
    ['aircraft', 'joints', 0, 'id'],
  ],
  // Not of a frame.
  lessonId: [],
}
