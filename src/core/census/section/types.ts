/** The plane a part is cut by: upright and facing along x or along y, or level. */
export type SectionAxis = 'x' | 'y' | 'z'

export interface SectionRegion {
  /** `cut` is all of the cut face; the others lie in it, but for supports. */
  readonly kind: 'cut' | 'wall' | 'skin' | 'room' | 'zone' | 'support'
  /** Which of the part's zones, from 0; −1 for what is none. */
  readonly zone: number
  /** Left, right, bottom, top; stride 4; mm. */
  readonly boxes: Float64Array
}

/**
 * A part cut by a plane, as its layers are laid. Upright cuts are seen with z up: along −x with y
 * to the right, or along y with x to the right. A level cut is one layer seen from above.
 */
export interface PartSection {
  readonly axis: SectionAxis
  /** The layer that was cut level, from 1; null for upright cuts. */
  readonly layer: number | null
  readonly layers: number
  /** 0–1 of the part's extent along the axis, and that extent, mm. */
  readonly atShare: number
  readonly reachMm: number
  /** What the whole part takes up in this direction of view, mm. */
  readonly frame: SectionFrame
  /** Only those that the plane meets. */
  readonly regions: readonly SectionRegion[]
}

export interface SectionFrame {
  readonly left: number
  readonly right: number
  readonly bottom: number
  readonly top: number
}
