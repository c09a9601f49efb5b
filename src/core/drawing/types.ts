import type { Mesh, Vec3 } from '../model/mesh.ts'

/**
 * Row-major 3 × 4: where a point of a mesh goes, in the frame's axes (x forward, y left, z up), mm.
 */
export type Motion = readonly [
  xx: number,
  xy: number,
  xz: number,
  x: number,
  yx: number,
  yy: number,
  yz: number,
  y: number,
  zx: number,
  zy: number,
  zz: number,
  z: number,
]

/** One piece to draw. Pieces of one item (a left arm and its mirror) share its number. */
export interface DrawnPiece {
  readonly item: string
  readonly mesh: Mesh
  readonly motion: Motion
  /** Steps it goes when all is drawn apart, in the frame's axes; left out, away from the middle. */
  readonly way?: Vec3
}

/**
 * A parallel view. Azimuth turns the eye about the axis up: 90° looks at the nose, 180° at the left
 * side with the nose to the left. Elevation 90° looks straight down.
 */
export interface View {
  readonly azimuthDeg: number
  readonly elevationDeg: number
}

/** Where the drawing lands on paper. px are CSS pixels, or any unit the paper uses. */
export interface Sheet {
  readonly widthPx: number
  readonly heightPx: number
  /** Kept free on every side for numbers. */
  readonly marginPx: number
  /** px a mm; left out, the drawing fills what the margin leaves. */
  readonly scale?: number
  /** Point of the frame in the middle of the sheet, mm; left out, the middle of what is drawn. */
  readonly middleMm?: readonly [number, number, number]
}

/** Faces up are lightest: the number of a tone, 0 to 3, from light to dark. */
export type Tone = 0 | 1 | 2 | 3

/** One item as it is seen: SVG path data in px. */
export interface ItemDrawing {
  readonly item: string
  /** Closed areas by tone; an empty string where the item shows none of it. */
  readonly tones: readonly [string, string, string, string]
  /** Where it stands against another item or the ground. */
  readonly outline: string
  /** Where two of its own faces meet. */
  readonly edges: string
  /** Visible px²; 0 for an item that others hide. */
  readonly areaPx2: number
  /** Where a leader line may start, by the side its number stands on; null for a hidden item. */
  readonly anchors: Anchors | null
}

export interface Anchors {
  readonly left: Anchor
  readonly right: Anchor
  readonly top: Anchor
  readonly bottom: Anchor
}

export interface Anchor {
  readonly x: number
  readonly y: number
  /** How many other items a straight leg to that side passes over. */
  readonly crossed: number
}

export interface LineDrawing {
  readonly widthPx: number
  readonly heightPx: number
  /** px a mm. */
  readonly scale: number
  readonly view: View
  /** In the order the items first came. */
  readonly items: readonly ItemDrawing[]
  /** Of the projection: px = `origin` + `scale` · (right, down) of a point in mm. */
  readonly originPx: readonly [number, number]
  /** Box of what is drawn: left, top, right, bottom. px */
  readonly boxPx: readonly [number, number, number, number]
}
