import { tidy } from './tidy.ts'
import type { Point, Solid, Workshop } from './workshop.ts'

const PANEL_MM = 183
const ROOT_CHORD_MM = 170
const TIP_CHORD_MM = 110
/**
 * Shares of the chord. The section is thickest a third back, and there the spar runs, square to the
 * root.
 */
const SPAR = 1 / 3
const THICKNESS = 0.11
const CAMBER = 0.02
/** At the trailing edge two walls of 0.45 mm meet. */
const TRAILING_EDGE = 0.007

/**
 * Wing panel 0 (root), 1 or 2 (tip) of the left half: x back from the spar, y up, z along the span
 * as it is printed, standing on its inner rib. The body is solid; a recipe of one wall and nothing
 * else makes the skin.
 */
export function wingPanel(shop: Workshop, panel: 0 | 1 | 2): Solid {
  const chord = chordAt(panel)
  const body = shop.raise(shop.polygon(section(chord, 40)), PANEL_MM, 0, chordAt(panel + 1) / chord)
  return shop.cut(
    body,
    // The spar's tube is straight: the section shrinks towards the spar's own middle.
    shop.rod(8.3, PANEL_MM, [0, 0, 0]),
    shop.rod(3.1, 14, [...wingDowel(chord), 0]),
    shop.rod(3.1, 14, [...wingDowel(chordAt(panel + 1)), PANEL_MM - 14]),
  )
}

/** Where the dowel behind the spar's meets the root of a tail plane half and of the fin, mm. */
export const TAIL_PIN_X = 19.2
export const FIN_PIN_X = 25.2

/**
 * Half of the tail plane: 64 to 44 mm chord, 150 mm long, flat section, a dowel and a pin at its
 * root.
 */
export function tailPlaneHalf(shop: Workshop): Solid {
  const body = shop.raise(shop.polygon(section(64, 24, 0.09, 0)), 150, 0, 44 / 64)
  return shop.cut(body, shop.rod(3.1, 60, [0, 0, 0]), shop.rod(2.1, 12, [TAIL_PIN_X, 0, 0]))
}

/** Fin: 84 to 56 mm chord, 120 mm tall, flat section, a dowel and a pin at its root. */
export function fin(shop: Workshop): Solid {
  const body = shop.raise(shop.polygon(section(84, 24, 0.08, 0)), 120, 0, 56 / 84)
  return shop.cut(body, shop.rod(3.1, 40, [0, 0, 0]), shop.rod(2.1, 12, [FIN_PIN_X, 0, 0]))
}

/**
 * A fifth of the chord ahead of the spar, on the middle line: where the dowel of a joint with this
 * chord lies.
 */
export function wingDowel(chord = ROOT_CHORD_MM): Point {
  return [tidy(-0.2 * chord), tidy(chord * (middleLine(SPAR - 0.2) - middleLine(SPAR)))]
}

/** Chord at a joint, 0 (root) to 3 (tip), mm. */
function chordAt(joint: number): number {
  return ROOT_CHORD_MM + ((TIP_CHORD_MM - ROOT_CHORD_MM) * joint) / 3
}

/** Height of the middle line, a parabola, in chords. */
function middleLine(s: number, camber = CAMBER): number {
  return 4 * camber * s * (1 - s)
}

/**
 * Our own section, plain enough to write down: half the thickness follows √s·(1 − s), which is
 * largest at s = 1/3, plus a wedge that opens to the trailing edge; see `middleLine` for the rest.
 * The origin is the middle of the section at the spar. The points crowd at the nose, where √s is
 * steep.
 */
function section(chord: number, steps: number, thickness = THICKNESS, camber = CAMBER): Point[] {
  const largest = Math.sqrt(SPAR) * (1 - SPAR)
  const middle = (s: number) => middleLine(s, camber)
  const at = (step: number, side: 1 | -1): Point => {
    const s = (step / steps) ** 2
    const half = ((thickness / 2) * Math.sqrt(s) * (1 - s)) / largest + (TRAILING_EDGE / 2) * s
    return [chord * (s - SPAR), chord * (middle(s) - middle(SPAR) + side * half)]
  }
  const lower = Array.from({ length: steps + 1 }, (_, i) => at(i, -1))
  const upper = Array.from({ length: steps }, (_, i) => at(steps - i, 1))
  return [...lower, ...upper]
}
