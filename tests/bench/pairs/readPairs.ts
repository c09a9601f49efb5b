import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Pattern } from '../../../src/core/model/settings.ts'

/** A mesh and what was measured on the toolpath it was printed with. Whatever a folder leaves out is null or empty. */
export interface Pair {
  readonly name: string
  /** Whose settings they are: the name's part before the first `__`, or the name. */
  readonly author: string
  readonly meshFile: string
  readonly walls: number
  readonly top: number
  readonly bottom: number
  readonly infillPct: number
  readonly layerMm: number
  readonly firstMm: number
  readonly pattern: Pattern
  readonly seen: Seen
}

/** mm, mm² and mm³. */
export interface Seen {
  /** Without skirt, brim and purge. */
  readonly partMm3: number
  readonly layers: number | null
  /** Mean plastic per way ÷ layer height. */
  readonly beadMm: number
  readonly beads: Readonly<Record<'walls' | 'solid' | 'sparse', number | null>>
  readonly kinds: Readonly<Record<'walls' | 'solid' | 'sparse' | 'first', number>>
  /** Way laid, of the part and what is purged. m */
  readonly pathM: number | null
}

/** A folder's pattern names in ours. */
const PATTERNS: readonly (readonly [RegExp, Pattern])[] = [
  [/gyroid/i, 'gyroid'],
  [/honey|hexa?gon$/i, 'honeycomb'],
  [/cubic|triang|tri-|star/i, 'triangles'],
  [/grid/i, 'grid'],
  [/line|rectilinear|zig/i, 'lines'],
]

/** The pairs that `pairs.json` of a folder names and whose mesh lies beside it; the others by name. */
export function readPairs(folder: string): {
  readonly pairs: readonly Pair[]
  readonly left: readonly string[]
} {
  const all = JSON.parse(readFileSync(join(folder, 'pairs.json'), 'utf8')) as Record<string, Raw>
  const pairs: Pair[] = []
  const left: string[] = []
  for (const [name, raw] of Object.entries(all)) {
    const pair = pairOf(name, raw, join(folder, `${name}.stl`))
    if (pair && existsSync(pair.meshFile)) pairs.push(pair)
    else left.push(name)
  }
  return { pairs, left }
}

interface Raw {
  readonly use?: Record<string, unknown>
  readonly stated?: Record<string, unknown>
  readonly seen?: Record<string, unknown>
}

function pairOf(name: string, raw: Raw, meshFile: string): Pair | null {
  const { use = {}, stated = {}, seen = {} } = raw
  const kinds = (seen['kinds'] ?? {}) as Record<string, unknown>
  const beads = (seen['beads'] ?? {}) as Record<string, unknown>
  const layerMm = number(seen['layer']) ?? number(stated['layer'])
  const partMm3 = number(seen['part']) ?? number(seen['deposit'])
  const pathM = number(seen['path_m'])
  const depositMm3 = number(seen['deposit'])
  const beadMm =
    number(seen['bead']) ??
    (depositMm3 && pathM && layerMm ? depositMm3 / (pathM * 1000 * layerMm) : null)
  if (layerMm === null || partMm3 === null || beadMm === null) return null
  const kind = (key: string): number => number(kinds[key]) ?? 0
  const bead = (key: string): number | null => number(beads[key]) ?? null
  const pattern = typeof stated['pattern'] === 'string' ? stated['pattern'] : ''
  return {
    name,
    author: name.split('__')[0] ?? name,
    meshFile,
    walls: number(use['walls']) ?? 2,
    top: number(use['top']) ?? 4,
    bottom: number(use['bottom']) ?? 4,
    infillPct: number(use['infill']) ?? 20,
    layerMm,
    firstMm: number(stated['first']) ?? layerMm,
    pattern: PATTERNS.find(([known]) => known.test(pattern))?.[1] ?? 'grid',
    seen: {
      partMm3,
      layers: number(seen['layers']),
      beadMm,
      beads: { walls: bead('walls'), solid: bead('solid inside'), sparse: bead('sparse inside') },
      kinds: {
        walls: kind('walls'),
        solid: kind('solid inside'),
        sparse: kind('sparse inside'),
        first: kind('first walls') + kind('first solid inside') + kind('first sparse inside'),
      },
      pathM,
    },
  }
}

function number(value: unknown): number | null {
  return typeof value === 'number' && Number.isFinite(value) ? value : null
}
