import { Color, LinearSRGBColorSpace } from 'three'
import type { ViewTheme } from './types.ts'

/**
 * Colours of the view. One neutral blue-grey for every part: the picture says where and how big,
 * the ledger says the rest.
 */
export interface Palette {
  readonly ground: Color
  readonly gridFine: Color
  readonly gridBold: Color
  readonly part: Color
  readonly edge: Color
  readonly edgeOpacity: number
  /** Laid over the faces that rest on the bed. */
  readonly resting: Color
  readonly shadow: Color
  readonly shadowOpacity: number
  readonly dimension: Color
}

export const PALETTES: Readonly<Record<ViewTheme, Palette>> = {
  light: {
    ground: colour('#fafbf9'),
    gridFine: colour('#e8ece8'),
    gridBold: colour('#d0d8d3'),
    part: colour('#8396ac'),
    edge: colour('#2b3642'),
    edgeOpacity: 0.62,
    resting: colour('#2f55c8'),
    shadow: colour('#2b3642'),
    shadowOpacity: 0.1,
    dimension: colour('#7d8983'),
  },
  dark: {
    ground: colour('#161b18'),
    gridFine: colour('#212824'),
    gridBold: colour('#333c37'),
    part: colour('#8699b0'),
    edge: colour('#0d1013'),
    edgeOpacity: 0.7,
    resting: colour('#93b1ff'),
    shadow: colour('#000000'),
    shadowOpacity: 0.38,
    dimension: colour('#7d8983'),
  },
}

/** Kept as screen values: the view shades in them and its renderer converts nothing. */
function colour(css: string): Color {
  return new Color().setStyle(css, LinearSRGBColorSpace)
}
