import { PATTERNS, patternName } from '../mesh/holes/patterns.ts'
import type { BodyHoles, BodyKind, ItemBody } from '../model/aircraft.ts'
import type { SourceMark } from '../model/figures.ts'
import type { JointThread } from '../model/joints.ts'

/** A pattern of holes to take, by what is bolted so. No products. */
export interface ShelfPattern {
  readonly name: string
  readonly kind: BodyKind
  readonly holes: BodyHoles
  /** Of spacing and thread together. */
  readonly mark: SourceMark
}

/**
 * Threads by the pattern's longer side. M3 for motors of 16 and 19 was read in a parts log and at
 * flyingmachinearena.org; the others are from memory, as are how deep motors are tapped (common
 * practice, no source): by the maker's sheet one knows.
 */
const MOTOR_THREADS: Readonly<Record<number, readonly [JointThread, SourceMark]>> = {
  9: ['M2', 'memory'],
  12: ['M2', 'memory'],
  16: ['M3', 'read'],
  19: ['M3', 'memory'],
  25: ['M3', 'memory'],
}
const BOARD_THREADS: Readonly<Record<number, JointThread>> = { 20: 'M2', 25.5: 'M2', 30.5: 'M3' }
/**
 * Of thread in a motor's base before a screw meets the windings (common practice, no source). mm
 */
const MOTOR_DEPTH_MM: Readonly<Partial<Record<JointThread, number>>> = { M2: 3, M3: 4 }

export const PATTERN_SHELF: readonly ShelfPattern[] = [
  ...PATTERNS.flatMap(({ aMm, bMm, layout, use }): readonly ShelfPattern[] => {
    const name = patternName({ aMm, bMm, layout })
    if (use === 'motor') {
      const [thread, mark] = MOTOR_THREADS[Math.max(aMm, bMm)] ?? ['M3', 'memory']
      const holes = { layout, aMm, bMm, thread, depthMm: MOTOR_DEPTH_MM[thread] ?? 4 }
      return [{ name, kind: 'motor', holes, mark }]
    }
    const thread = BOARD_THREADS[aMm] ?? 'M3'
    const holes = { layout, aMm, bMm, thread, depthMm: null }
    return [{ name, kind: 'board', holes, mark: 'memory' }]
  }),
  {
    name: 'one in each side',
    kind: 'camera',
    holes: { layout: 'sides', aMm: 1, bMm: 1, thread: 'M2', depthMm: 3 },
    mark: 'memory',
  },
]

/** A body to type over (sizes: common practice, no source). */
export const BODY_DEFAULTS: Readonly<Record<BodyKind, ItemBody>> = {
  motor: body('motor', [28, 28, 18], 5),
  board: body('board', [36, 36, 8]),
  camera: body('camera', [20, 19, 19]),
  pack: body('pack', [75, 35, 25]),
  prop: body('prop', [127, 127, 7], 5),
  other: body('other', [30, 20, 10]),
}

function body(kind: BodyKind, sizeMm: ItemBody['sizeMm'], shaftMm = 0): ItemBody {
  const names: Partial<Record<BodyKind, string>> = {
    motor: '16 × 16',
    board: '30.5 × 30.5',
    camera: 'one in each side',
  }
  const holes =
    PATTERN_SHELF.find((each) => each.kind === kind && each.name === names[kind])?.holes ?? null
  return { kind, sizeMm, holes, shaftMm }
}
