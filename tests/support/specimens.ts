import type { Loop, Point } from './polygon.ts'

/**
 * Test-bar outlines of ASTM D638 (types I–V), ISO 527-2 (1A, 1B) and ISO 178, lengths in mm.
 * Dimensions: the standards' nominal values; two of ISO 527-2's shoulder radii (24 and 60 mm) from
 * memory, but they give the shoulder distances the standard states (l2 109.3, 106–120 mm).
 */
interface Bar {
  readonly overall: number
  readonly endWidth: number
  readonly narrowLength: number
  readonly narrowWidth: number
  /** Shoulder radius beside the narrow part. */
  readonly radius: number
  /** Second shoulder radius beside the end, 0 where the shoulder is one arc. */
  readonly outerRadius: number
}

const bar = (
  overall: number,
  endWidth: number,
  narrowLength: number,
  narrowWidth: number,
  radius: number,
  outerRadius = 0,
): Bar => ({ overall, endWidth, narrowLength, narrowWidth, radius, outerRadius })

const BARS = {
  I: bar(165, 19, 57, 13, 76),
  II: bar(183, 19, 57, 6, 76),
  III: bar(246, 29, 57, 19, 76),
  IV: bar(115, 19, 33, 6, 14, 25),
  V: bar(63.5, 9.53, 9.53, 3.18, 12.7),
  '1A': bar(170, 20, 80, 10, 24),
  '1A-150': bar(150, 20, 80, 10, 24),
  '1B': bar(150, 20, 60, 10, 60),
} as const

export type SpecimenName = keyof typeof BARS | '178'

/**
 * How far one shoulder reaches along the bar, mm: from the narrow part to where the end width is
 * met.
 */
export function shoulderLength(name: keyof typeof BARS): number {
  const { endWidth, narrowWidth, radius, outerRadius } = BARS[name]
  const rise = (endWidth - narrowWidth) / 2
  const reach = radius + outerRadius
  return Math.sqrt(reach * reach - (reach - rise) * (reach - rise))
}

/**
 * The outline, counter-clockwise, middle at the origin, length along x; every arc cut into
 * `segments`.
 */
export function specimenOutline(name: SpecimenName, segments = 64): Loop {
  if (name === '178') {
    return [
      [-40, -5],
      [40, -5],
      [40, 5],
      [-40, 5],
    ]
  }
  const quarter = [...shoulder(BARS[name], segments), endCorner(BARS[name])]
  const turned = (point: Point, x: number, y: number): Point => [x * point[0], y * point[1]]
  const rest = quarter.toReversed()
  return [
    ...rest.map((p) => turned(p, 1, 1)),
    ...quarter.map((p) => turned(p, -1, 1)),
    ...rest.map((p) => turned(p, -1, -1)),
    ...quarter.map((p) => turned(p, 1, -1)),
  ]
}

const endCorner = (dimensions: Bar): Point => [dimensions.overall / 2, dimensions.endWidth / 2]

/**
 * From the narrow part outwards: an arc tangent to the narrow edge, and for type IV one tangent to
 * the end's edge.
 */
function shoulder(dimensions: Bar, segments: number): Point[] {
  const { endWidth, narrowLength, narrowWidth, radius, outerRadius } = dimensions
  const reach = radius + outerRadius
  const sweep = Math.acos((reach - (endWidth - narrowWidth) / 2) / reach)
  const steps = Array.from({ length: segments + 1 }, (_, i) => (sweep * i) / segments)
  const inner = steps.map((angle): Point => [
    narrowLength / 2 + radius * Math.sin(angle),
    narrowWidth / 2 + radius * (1 - Math.cos(angle)),
  ])
  if (outerRadius === 0) return inner
  const end = narrowLength / 2 + reach * Math.sin(sweep)
  const outer = steps
    .toReversed()
    .slice(1)
    .map((angle): Point => [
      end - outerRadius * Math.sin(angle),
      endWidth / 2 - outerRadius * (1 - Math.cos(angle)),
    ])
  return [...inner, ...outer]
}
