import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Pattern } from '../../../src/core/model/settings.ts'

/**
 * A mesh and what was measured on the toolpath it was printed with. Whatever a folder leaves out is
 * null or empty.
 */
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
  // Lines in three directions, hexagons between them or not.
  [/cubic|triang|tri-|star/i, 'triangles'],
  [/honey|hexa?gon$/i, 'honeycomb'],
  [/grid/i, 'grid'],
  [/line|rectilinear|zig/i, 'lines'],
]

/** A name that cannot be scored, and why. */
export interface LeftOut {
  readonly name: string
  readonly why: string
}

/** Meshes are looked for by these endings. */
const ENDINGS = ['stl', 'STL', '3mf', 'obj'] as const

/**
 * The pairs that `pairs.json` of a folder names, with a mesh beside it and a measure; the others
 * with what they lack.
 * @throws Error with one sentence where the folder has no such file or it is no list of pairs.
 */
export function readPairs(folder: string): {
  readonly pairs: readonly Pair[]
  readonly left: readonly LeftOut[]
} {
  const pairs: Pair[] = []
  const left: LeftOut[] = []
  for (const [name, raw] of Object.entries(readList(join(folder, 'pairs.json')))) {
    const pair = pairOf(name, objectOf(raw), folder)
    if ('why' in pair) left.push(pair)
    else pairs.push(pair)
  }
  return { pairs, left }
}

function readList(file: string): Fields {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch {
    throw new Error(
      `${file} cannot be read. It must hold settings and measures by the names of meshes beside it.`,
    )
  }
  let list: unknown
  try {
    list = JSON.parse(text)
  } catch (error) {
    throw new Error(`${file} is no JSON: ${(error as Error).message}.`, { cause: error })
  }
  if (typeof list !== 'object' || list === null || Array.isArray(list)) {
    throw new Error(`${file} holds no object of pairs by name.`)
  }
  return list as Fields
}

type Fields = Readonly<Record<string, unknown>>

function objectOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null ? (value as Fields) : {}
}

function pairOf(name: string, raw: Fields, folder: string): Pair | LeftOut {
  const [use, stated, seen] = [objectOf(raw['use']), objectOf(raw['stated']), objectOf(raw['seen'])]
  const [kinds, beads] = [objectOf(seen['kinds']), objectOf(seen['beads'])]
  const out = (why: string): LeftOut => ({ name, why })
  const meshFile = ENDINGS.map((ending) => join(folder, `${name}.${ending}`)).find(existsSync)
  if (meshFile === undefined) return out(`no mesh ${name}.${ENDINGS[0]} beside it`)
  const layerMm = above0(seen['layer']) ?? above0(stated['layer'])
  const partMm3 = above0(seen['part']) ?? above0(seen['deposit'])
  const pathM = above0(seen['path_m'])
  const depositMm3 = above0(seen['deposit'])
  const beadMm =
    above0(seen['bead']) ??
    (depositMm3 && pathM && layerMm ? depositMm3 / (pathM * 1000 * layerMm) : null)
  if (layerMm === null) return out('no layer height')
  if (partMm3 === null) return out('no measured volume')
  if (beadMm === null) return out('no width of its lines, nor the path to work it out from')
  const kind = (key: string): number => number(kinds[key]) ?? 0
  const bead = (key: string): number | null => above0(beads[key])
  const whole = (key: string, usual: number): number =>
    Math.max(0, Math.round(number(use[key]) ?? usual))
  const pattern = typeof stated['pattern'] === 'string' ? stated['pattern'] : ''
  return {
    name,
    author: name.split('__')[0] ?? name,
    meshFile,
    walls: whole('walls', 2),
    top: whole('top', 4),
    bottom: whole('bottom', 4),
    infillPct: Math.min(100, Math.max(0, number(use['infill']) ?? 20)),
    layerMm,
    firstMm: above0(stated['first']) ?? layerMm,
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

/** Numbers may stand in quotes. */
function number(value: unknown): number | null {
  const told = typeof value === 'string' && value.trim() !== '' ? Number(value) : value
  return typeof told === 'number' && Number.isFinite(told) ? told : null
}

function above0(value: unknown): number | null {
  const told = number(value)
  return told !== null && told > 0 ? told : null
}
