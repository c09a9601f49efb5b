import type { Printer } from '../model/figures.ts'
import type { PrinterNumber } from './limits.ts'

/*
 * Classes of machine, not machines: each number is what such a printer is commonly run at (common practice, no source),
 * except where a comment names one. Hours depend on them more than on anything else, so every field can be typed over.
 */

const ORDINARY: Printer = {
  id: 'ordinary',
  name: 'Ordinary printer of today',
  wallMmS: 60,
  skinMmS: 70,
  infillMmS: 90,
  firstLayerMmS: 25,
  travelMmS: 150,
  accelMmS2: 2000,
  wallAccelMmS2: 1000,
  travelAccelMmS2: 2000,
  cornerMmS: 12,
  // A standard 0.4 mm nozzle melts about 11 mm³/s (ellis3dp.com).
  flowMm3S: 11,
  layerChangeS: 1,
  retractS: 0.3,
  leastLayerS: 6,
  clockFactor: null,
  startS: 300,
  // Between 114 W (Hopkins et al. 2021, as given on ammap.eu, at 210 and 60 °C) and 189.5 W (a 300
  // mm machine, both PLA, 3dprintscape.com), measured.
  powerW: 150,
  bedMm: [220, 220, 240],
}

export const PRINTERS: readonly Printer[] = [
  ORDINARY,
  {
    id: 'mid-2010s',
    name: 'Slow cartesian of the mid-2010s',
    wallMmS: 50,
    skinMmS: 50,
    infillMmS: 60,
    firstLayerMmS: 25,
    travelMmS: 120,
    accelMmS2: 1000,
    wallAccelMmS2: 1000,
    travelAccelMmS2: 1000,
    cornerMmS: 15,
    flowMm3S: 8,
    layerChangeS: 1,
    retractS: 0.4,
    leastLayerS: 8,
    clockFactor: null,
    startS: 240,
    powerW: 120,
    bedMm: [200, 200, 180],
  },
  {
    id: 'fast-enclosed',
    name: 'Fast enclosed printer',
    wallMmS: 180,
    skinMmS: 220,
    infillMmS: 250,
    firstLayerMmS: 50,
    travelMmS: 400,
    accelMmS2: 8000,
    wallAccelMmS2: 5000,
    travelAccelMmS2: 10000,
    cornerMmS: 20,
    flowMm3S: 22,
    layerChangeS: 0.8,
    retractS: 0.2,
    leastLayerS: 4,
    clockFactor: null,
    startS: 420,
    powerW: 250,
    bedMm: [250, 250, 250],
  },
  {
    id: 'large-nozzle',
    name: 'Large nozzle (0.8 mm)',
    wallMmS: 40,
    skinMmS: 45,
    infillMmS: 50,
    firstLayerMmS: 20,
    travelMmS: 150,
    accelMmS2: 1500,
    wallAccelMmS2: 1000,
    travelAccelMmS2: 2000,
    cornerMmS: 10,
    flowMm3S: 20,
    layerChangeS: 1,
    retractS: 0.4,
    leastLayerS: 8,
    clockFactor: null,
    startS: 360,
    powerW: 250,
    bedMm: [300, 300, 300],
  },
]

export const PRINTER_DEFAULT: Printer = ORDINARY

/**
 * Whether a draw from the wall is one that a class of printer starts with: nobody typed his own.
 */
export function isUsualDraw(powerW: number): boolean {
  return PRINTERS.some((printer) => printer.powerW === powerW)
}

/** One number of a printer as it is typed, in `unit`; its limits stand in `limits.ts`. */
export interface PrinterField {
  readonly key: Exclude<PrinterNumber, 'bedMm' | 'clockFactor'>
  readonly label: string
  readonly unit: string
  /** One plain sentence: what it is and where to find it. */
  readonly explain: string
}

export const PRINTER_FIELDS: readonly PrinterField[] = [
  {
    key: 'wallMmS',
    label: 'Wall speed',
    unit: 'mm/s',
    explain:
      'How fast the nozzle goes round the outline of the part; the outermost line follows unless its ' +
      'own speed is known.',
  },
  {
    key: 'skinMmS',
    label: 'Skin speed',
    unit: 'mm/s',
    explain:
      'How fast the solid top and bottom layers are laid; what shows on top and what hangs over air follow.',
  },
  {
    key: 'infillMmS',
    label: 'Infill speed',
    unit: 'mm/s',
    explain: 'How fast the open pattern inside the part, and support, is laid.',
  },
  {
    key: 'firstLayerMmS',
    label: 'First-layer speed',
    unit: 'mm/s',
    explain:
      'Everything on the first layer is laid at this speed at most, so that it sticks to the bed.',
  },
  {
    key: 'travelMmS',
    label: 'Travel speed',
    unit: 'mm/s',
    explain: 'How fast the nozzle moves when it lays nothing.',
  },
  {
    key: 'accelMmS2',
    label: 'Acceleration, skin and infill',
    unit: 'mm/s²',
    explain:
      'How quickly the head picks up speed on skins and infill. On short lines this, not the speed, decides the hours.',
  },
  {
    key: 'wallAccelMmS2',
    label: 'Acceleration, walls',
    unit: 'mm/s²',
    explain: 'The same along the outlines, where it is often set lower for a clean surface.',
  },
  {
    key: 'travelAccelMmS2',
    label: 'Acceleration, travel',
    unit: 'mm/s²',
    explain: 'The same for moves that lay nothing.',
  },
  {
    key: 'cornerMmS',
    label: 'Corner speed',
    unit: 'mm/s',
    explain: 'The speed at which the head may go through a right-angled corner without stopping.',
  },
  {
    key: 'flowMm3S',
    label: 'Melt limit',
    unit: 'mm³/s',
    explain:
      'How much plastic the hot end melts a second. Above it every line is slowed down; ' +
      'a plain 0.4 mm nozzle manages about 11.',
  },
  {
    key: 'layerChangeS',
    label: 'Layer change',
    unit: 's',
    explain: 'Seconds lost at each new layer: lifting, drawing the filament back, moving over.',
  },
  {
    key: 'retractS',
    label: 'Retract',
    unit: 's',
    explain:
      'Drawing the filament back before a longer travel and pushing it forward again, both together.',
  },
  {
    key: 'leastLayerS',
    label: 'Least layer time',
    unit: 's',
    explain:
      'A small layer is slowed down until it takes this long, or to the slowest speed, so that it sets ' +
      'before the next one.',
  },
  {
    key: 'startS',
    label: 'Start-up',
    unit: 's',
    explain: 'Heating and the start routine, once for each print, before the first line is laid.',
  },
  {
    key: 'powerW',
    label: 'Power',
    unit: 'W',
    explain:
      'Average draw from the wall over a print in PLA, bed heating included. A plug-in meter tells; ' +
      'plastics that want it hotter are reckoned from it.',
  },
]
