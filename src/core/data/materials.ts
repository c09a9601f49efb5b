import type { Material, SourceMark, Sourced } from '../model/figures.ts'

const TDS =
  'maker data sheets (wiki.polymaker.com) as copied in EricPedley/wing_optimization c1846c5, polymaker_detailed_tds.csv'
const GLANCE =
  'maker summary table (wiki.polymaker.com) as copied in EricPedley/wing_optimization c1846c5, ' +
  'polymaker_at_a_glance.csv'
const HANDBOOK = 'e-uparts.com machine-design handbook table'
const ENGINEERS_EDGE = 'engineersedge.com table 14630'
const MAIN = 'supplier data in W. J. Main, MSc thesis, Univ. Oklahoma 2025'
const RECALLED = 'from memory, not read; change it to your maker’s sheet'
const USUAL = 'common practice, no source'

const of = (mark: SourceMark, value: number, source: string): Sourced => ({ value, mark, source })
const read = (value: number, source: string) => of('read', value, source)
const derived = (value: number, source: string) => of('derived', value, source)
const memory = (value: number) => of('memory', value, RECALLED)
const usual = (value: number) => of('common practice', value, USUAL)

/** Filament is nearly always 1.75 mm today (common practice, no source). */
const DIAMETER_MM = 1.75

/** What the rows of the table below leave out because it is the same for all. */
type Row = Omit<Material, 'densityTyped' | 'diameterMm' | 'flow'> & { readonly flow?: number }

/*
 * Strength and stiffness are of printed specimens where a maker gives them, drawn in the layer
 * plane and across the layers. The heat limit is the temperature of deflection under 0.45 MPa, or
 * the glass transition where that is lower and stated. Prices are per kg in euro and only a start:
 * the builder knows what the spool cost.
 */
const ROWS: readonly Row[] = [
  {
    id: 'pla',
    name: 'PLA',
    densityGCm3: read(1.24, 'typical plain unfilled PLA; makers differ by ±6 %, 1.17 to 1.32'),
    densityRangeGCm3: [1.17, 1.32],
    pricePerKg: usual(20),
    youngsGPa: read(3.427, TDS),
    strengthInPlaneMPa: read(52.3, TDS),
    strengthAcrossMPa: read(40.5, TDS),
    heatLimitC: read(60, TDS),
    shrinkagePct: read(0.5, 'CR-3D data sheet “CRystal PLA” 2022, mould shrinkage, mineral-filled'),
    nozzleC: usual(210),
    bedC: usual(60),
  },
  {
    id: 'tough-pla',
    name: 'Tough PLA',
    densityGCm3: read(1.205, TDS),
    densityRangeGCm3: [1.2, 1.24],
    pricePerKg: usual(28),
    youngsGPa: read(2.151, TDS),
    strengthInPlaneMPa: read(41.3, TDS),
    strengthAcrossMPa: read(32.4, TDS),
    heatLimitC: read(55, TDS),
    shrinkagePct: memory(0.3),
    nozzleC: usual(215),
    bedC: usual(60),
  },
  {
    id: 'foaming-pla',
    name: 'Foaming PLA',
    densityGCm3: derived(1.21, 'middle of the unfoamed densities seen, 1.17 to 1.24'),
    densityRangeGCm3: [1.17, 1.24],
    pricePerKg: usual(45),
    // 225 °C with the flow cut to 45 % (richrap.blogspot.com, April 2019): about 0.55 g/cm³ in the
    // part.
    flow: 0.45,
    youngsGPa: read(1.689, `${TDS}; how far it was foamed is not stated`),
    strengthInPlaneMPa: read(24.4, `${TDS}; how far it was foamed is not stated`),
    strengthAcrossMPa: read(20.8, `${TDS}; how far it was foamed is not stated`),
    heatLimitC: read(54, TDS),
    shrinkagePct: memory(0.3),
    nozzleC: read(225, 'richrap.blogspot.com, April 2019: foamed at 225 °C with the flow at 45 %'),
    bedC: usual(60),
  },
  {
    id: 'abs',
    name: 'ABS',
    densityGCm3: read(1.04, 'supplier table in Mushtaq 2023, doi 10.3390/ma16093392, table 2'),
    densityRangeGCm3: [1.02, 1.12],
    pricePerKg: usual(22),
    youngsGPa: read(2.247, TDS),
    strengthInPlaneMPa: read(33.4, TDS),
    strengthAcrossMPa: read(29.7, TDS),
    heatLimitC: read(100, TDS),
    shrinkagePct: read(0.519, 'apacinfrastructure.com.au ABS sheet, linear mould shrinkage'),
    nozzleC: usual(240),
    bedC: usual(100),
  },
  {
    id: 'asa',
    name: 'ASA',
    densityGCm3: read(1.07, HANDBOOK),
    densityRangeGCm3: [1.05, 1.13],
    pricePerKg: usual(28),
    youngsGPa: read(2.379, TDS),
    strengthInPlaneMPa: read(43.8, TDS),
    strengthAcrossMPa: read(32, TDS),
    heatLimitC: read(103, TDS),
    shrinkagePct: memory(0.5),
    nozzleC: usual(250),
    bedC: usual(100),
  },
  {
    id: 'petg',
    name: 'PETG',
    densityGCm3: of('weak', 1.27, 'CR-3D data sheet 2025 (ESD grade); biologyinsights, fabbaloo'),
    densityRangeGCm3: [1.23, 1.3],
    pricePerKg: usual(20),
    youngsGPa: read(2.117, TDS),
    strengthInPlaneMPa: read(50.8, TDS),
    strengthAcrossMPa: read(42.8, TDS),
    heatLimitC: read(78, TDS),
    shrinkagePct: memory(0.4),
    nozzleC: usual(240),
    bedC: usual(80),
  },
  {
    id: 'pc',
    name: 'PC',
    densityGCm3: read(1.19, TDS),
    densityRangeGCm3: [1.19, 1.21],
    pricePerKg: usual(40),
    youngsGPa: read(2.497, TDS),
    strengthInPlaneMPa: read(69.1, TDS),
    strengthAcrossMPa: read(52.8, TDS),
    heatLimitC: read(111, TDS),
    shrinkagePct: memory(0.6),
    nozzleC: usual(270),
    bedC: usual(110),
  },
  {
    id: 'pa6',
    name: 'PA6',
    densityGCm3: of('weak', 1.13, 'nylon in general: biologyinsights, fabbaloo; 1.12 to 1.16 seen'),
    densityRangeGCm3: [1.12, 1.16],
    pricePerKg: usual(50),
    youngsGPa: read(1.9, 'polyplasty.cz, cast PA6 after taking up water from the air; 3.2 dry'),
    strengthInPlaneMPa: memory(60),
    strengthAcrossMPa: memory(45),
    heatLimitC: memory(110),
    shrinkagePct: memory(1.2),
    nozzleC: usual(260),
    bedC: usual(80),
  },
  {
    id: 'pa12',
    name: 'PA12',
    densityGCm3: memory(1.02),
    densityRangeGCm3: [1.01, 1.03],
    pricePerKg: usual(55),
    youngsGPa: memory(1.3),
    strengthInPlaneMPa: memory(45),
    strengthAcrossMPa: memory(35),
    heatLimitC: memory(100),
    shrinkagePct: memory(0.9),
    nozzleC: usual(255),
    bedC: usual(80),
  },
  {
    id: 'pa6-cf',
    name: 'PA6-CF',
    densityGCm3: read(1.17, `${GLANCE}, 20 % fibre`),
    densityRangeGCm3: [1.17, 1.19],
    pricePerKg: usual(85),
    youngsGPa: memory(7),
    strengthInPlaneMPa: read(109.3, `${GLANCE}, 20 % fibre`),
    // About half across the layers for short fibre: PLA-CF 0.48 in the same sheets.
    strengthAcrossMPa: derived(
      54,
      'half of the strength in plane, as short-fibre PLA shows (0.48)',
    ),
    heatLimitC: read(215, `${GLANCE}, 20 % fibre`),
    shrinkagePct: memory(0.3),
    nozzleC: usual(280),
    bedC: usual(80),
  },
  {
    id: 'petg-cf',
    name: 'PETG-CF',
    densityGCm3: read(1.3, `${GLANCE}, 8 % fibre`),
    densityRangeGCm3: [1.27, 1.3],
    pricePerKg: usual(40),
    youngsGPa: memory(3.5),
    strengthInPlaneMPa: read(59.8, `${GLANCE}, 8 % fibre`),
    strengthAcrossMPa: derived(
      30,
      'half of the strength in plane, as short-fibre PLA shows (0.48)',
    ),
    heatLimitC: read(68.6, `${GLANCE}, 8 % fibre`),
    shrinkagePct: memory(0.3),
    nozzleC: usual(250),
    bedC: usual(80),
  },
  {
    id: 'pa12-cf',
    name: 'PA12-CF',
    densityGCm3: read(1.06, `${GLANCE}, 10 % fibre`),
    densityRangeGCm3: [1, 1.06],
    pricePerKg: usual(85),
    youngsGPa: read(6, MAIN),
    strengthInPlaneMPa: read(77.4, `${GLANCE}, 10 % fibre`),
    strengthAcrossMPa: derived(
      38,
      'half of the strength in plane, as short-fibre PLA shows (0.48)',
    ),
    heatLimitC: read(131, `${GLANCE}, 10 % fibre`),
    shrinkagePct: memory(0.3),
    nozzleC: usual(270),
    bedC: usual(80),
  },
  {
    id: 'tpu-95a',
    name: 'TPU 95A',
    densityGCm3: read(1.22, GLANCE),
    densityRangeGCm3: [1.16, 1.23],
    pricePerKg: usual(32),
    youngsGPa: memory(0.05),
    strengthInPlaneMPa: of('weak', 30, 'unreviewed digest, 26 to 43'),
    strengthAcrossMPa: memory(24),
    heatLimitC: memory(75),
    shrinkagePct: memory(0.8),
    nozzleC: usual(225),
    bedC: usual(45),
  },
  {
    id: 'pp',
    name: 'PP',
    densityGCm3: read(0.91, ENGINEERS_EDGE),
    densityRangeGCm3: [0.9, 0.91],
    pricePerKg: usual(45),
    youngsGPa: read(1.07, ENGINEERS_EDGE),
    strengthInPlaneMPa: of('read', 29, `${HANDBOOK} and ${ENGINEERS_EDGE}, 29 to 38, moulded`),
    strengthAcrossMPa: memory(22),
    heatLimitC: memory(85),
    shrinkagePct: memory(1.5),
    nozzleC: usual(230),
    bedC: usual(85),
  },
]

/**
 * The built-in materials, prices in euro. `materialsIn` of prices.ts gives them in another
 * currency.
 */
export const MATERIALS: readonly Material[] = ROWS.map((row) => ({
  flow: 1,
  ...row,
  densityTyped: false,
  diameterMm: DIAMETER_MM,
}))
