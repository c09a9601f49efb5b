import { counted, grouped } from '../words/counts.ts'
import { formatNumber, formatVolume } from '../words/format.ts'
import type { Bounds, Finding } from '../model/mesh.ts'
import { joinBounds } from './volume.ts'

/** What `measureMesh` knows of one body. */
export interface BodyJudgement {
  /**
   * `cavity`: inside another, facing the other way. `buried`: inside another, facing the same way.
   * `sheet`: encloses nothing. `reverse copy`: lies on another body, facing the other way.
   */
  readonly kind: 'solid' | 'cavity' | 'buried' | 'sheet' | 'reverse copy'
  /** Most of it faces inwards although it is no cavity. */
  readonly insideOut: boolean
  /** Never negative. */
  readonly volumeMm3: number
  readonly areaMm2: number
  readonly triangles: number
  /** Triangles that face against most of the body's area. */
  readonly wrongWay: number
  readonly boundsMm: Bounds
}

/** What `measureMesh` knows of the whole mesh. */
interface MeshJudgement {
  readonly triangles: number
  readonly bodies: readonly BodyJudgement[]
  readonly boundsMm: Bounds
  /**
   * Bodies that no line can lay, and whether they were left out; those are not among `bodies` then.
   */
  readonly hairs: readonly BodyJudgement[]
  readonly keepsHairs: boolean
  /** It is known of all bodies what they are inside of. */
  readonly isNestKnown: boolean
  readonly openEdges: number
  /** The box round the longest open edge; null where there is none. */
  readonly openPlace: Bounds | null
  readonly crowdedEdges: number
  readonly contradictions: number
  readonly degenerate: number
  readonly duplicates: number
}

/**
 * No printed airframe part is shorter than this along its longest side, or longer than the other
 * (common practice, no source).
 */
const SHORTEST_MM = 2
const LONGEST_MM = 1000

const EXPECTED = `airframe parts run from ${SHORTEST_MM} mm to ${formatNumber(LONGEST_MM, 'en')} mm`

/** A speck holds at most this share of the largest body's volume … */
const SPECK_VOLUME = 1e-3
/**
 * … and is at most this share of its length across. Ours: well below a washer beside a deck plate.
 */
const SPECK_LENGTH = 0.05

/** Says in a builder's words what is odd about a mesh; nothing for a sound one. */
export function describeMesh(judged: MeshJudgement): Finding[] {
  return [
    openEdges(judged),
    crowdedEdges(judged),
    mixedFacing(judged),
    insideOut(judged),
    degenerate(judged),
    duplicates(judged),
    severalBodies(judged),
    unknownNest(judged),
    cavities(judged),
    specks(judged),
    hairs(judged),
    unlikelySize(judged),
  ].filter((finding) => finding !== null)
}

/**
 * A note: whether any layer sees the gap, and how much of it, only the count tells (see
 * `layerFindings`).
 */
function openEdges({ openEdges: count, openPlace }: MeshJudgement): Finding | null {
  if (count === 0) return null
  return {
    code: 'open-edges',
    grade: 'note',
    short: 'a gap in the skin',
    count,
    ...placed(openPlace),
    message:
      `${counted(count, 'edge has', 'edges have')} a triangle on one side only, so the skin has a gap. ` +
      'The volume is measured as if every gap were closed flat. ' +
      'Close the surface in your drawing and export it again.',
  }
}

function crowdedEdges({ crowdedEdges: count }: MeshJudgement): Finding | null {
  if (count === 0) return null
  return {
    code: 'non-manifold-edges',
    grade: 'worth knowing',
    short: 'bodies joined along an edge',
    count,
    message:
      `More than two triangles meet in ${counted(count, 'edge', 'edges')}: ` +
      'bodies that touch along an edge, or a wall inside the part. ' +
      'Where bodies touch, let them overlap a little or join them in your drawing.',
  }
}

function mixedFacing({ bodies, contradictions, triangles }: MeshJudgement): Finding | null {
  const count = bodies.reduce((sum, body) => sum + body.wrongWay, 0)
  if (count === 0 && contradictions === 0) return null
  const facing =
    `${counted(count, 'triangle', 'triangles')} of ${grouped(triangles)} ` +
    `${count === 1 ? 'faces' : 'face'} against the rest of the skin.`
  if (contradictions > 0) {
    return {
      code: 'mixed-facing',
      grade: 'changes the grams',
      short: 'inside and outside unclear',
      count: Math.max(count, 1),
      message:
        `${facing} At ${counted(contradictions, 'edge', 'edges')} inside and outside cannot be told ` +
        'apart, so the volume is uncertain. Repair the part in your drawing and export it again.',
    }
  }
  return {
    code: 'mixed-facing',
    grade: 'worth knowing',
    short: 'faces turned the wrong way',
    count,
    message:
      `${facing} The volume is measured with all of them turned the same way. ` +
      'Let your drawing program make the faces agree before you print.',
  }
}

function insideOut({ bodies }: MeshJudgement): Finding | null {
  const count = bodies.filter((body) => body.insideOut).length
  if (count === 0) return null
  const subject = bodies.length === 1 ? 'The part is' : counted(count, 'body is', 'bodies are')
  return {
    code: 'inside-out',
    grade: 'worth knowing',
    short: 'inside out',
    count,
    ...placeOf(bodies.length === 1 ? [] : bodies.filter((body) => body.insideOut)),
    message:
      `${subject} inside out: the skin faces inwards, as after mirroring. ` +
      'The volume is measured right all the same. ' +
      'Turn the faces round in your drawing before you print.',
  }
}

function degenerate({ degenerate: count }: MeshJudgement): Finding | null {
  if (count === 0) return null
  return {
    code: 'degenerate-triangles',
    grade: 'note',
    short: 'triangles without area',
    count,
    message:
      `${counted(count, 'triangle has', 'triangles have')} no area. ` +
      'They add nothing to the figures; nothing to do.',
  }
}

function duplicates({ duplicates: copies, bodies }: MeshJudgement): Finding | null {
  const backs = bodies.filter((body) => body.kind === 'reverse copy')
  const backCount = backs.reduce((sum, body) => sum + body.triangles, 0)
  const count = copies + backCount
  if (count === 0) return null
  const back =
    backCount === 0
      ? ''
      : ` ${grouped(backCount)} of them face the other way (a two-sided surface).`
  return {
    code: 'duplicate-triangles',
    grade: 'note',
    short: 'triangles there twice',
    count,
    ...placeOf(backs),
    message:
      `${counted(count, 'triangle lies', 'triangles lie')} exactly on another one.${back} Each is ` +
      'measured once. If a body was exported twice, remove one.',
  }
}

function severalBodies({ bodies }: MeshJudgement): Finding | null {
  const solids = bodies.filter((body) => body.kind === 'solid' || body.kind === 'buried')
  if (solids.length < 2) return null
  const buried = solids.filter((body) => body.kind === 'buried')
  const inside =
    buried.length === 0
      ? ''
      : ` ${counted(buried.length, 'of them lies', 'of them lie')} wholly inside another and ` +
        `${buried.length === 1 ? 'counts' : 'count'} as solid; if a hollow was meant, its faces must ` +
        'point the other way.'
  return {
    code: 'several-bodies',
    grade: 'note',
    short: counted(solids.length, 'body', 'bodies'),
    count: solids.length,
    message:
      `${counted(solids.length, 'separate body', 'separate bodies')} in one file. ` +
      'Their volumes are added up here; where they overlap, the layer count takes the shared ' +
      `space once.${inside}`,
  }
}

function unknownNest({ bodies, isNestKnown }: MeshJudgement): Finding | null {
  if (isNestKnown) return null
  return {
    code: 'unknown-nest',
    grade: 'changes the grams',
    short: 'too many bodies in one another',
    count: bodies.length,
    message:
      `So many of its ${grouped(bodies.length)} bodies lie in one another that it was not worked out for ` +
      'all of them which are hollows; those count as solid. Export the part in fewer bodies, ' +
      'or in several files.',
  }
}

function cavities({ bodies }: MeshJudgement): Finding | null {
  const hollows = bodies.filter((body) => body.kind === 'cavity')
  if (hollows.length === 0) return null
  const volume = hollows.reduce((sum, body) => sum + body.volumeMm3, 0)
  return {
    code: 'cavity',
    grade: 'note',
    short: 'a closed hollow',
    count: hollows.length,
    ...placeOf(hollows),
    message:
      `${counted(hollows.length, 'closed hollow', 'closed hollows')} inside the part, ` +
      `${formatVolume(volume, 'en')} in all, taken off the volume. ` +
      'Nothing put there can be taken out again, support included.',
  }
}

/** A tiny body away from the rest. */
interface Speck {
  /** Which body. */
  readonly place: number
  readonly gapMm: number
}

/**
 * The bodies that were most likely left over in the drawing: tiny, and off from everything else by
 * more than their own size; and surfaces that enclose nothing.
 */
export function findSpecks(bodies: readonly BodyJudgement[]): readonly Speck[] {
  const largest = bodies.reduce((best, body) => (body.volumeMm3 > best.volumeMm3 ? body : best))
  const small = (body: BodyJudgement) =>
    body !== largest &&
    body.volumeMm3 <= SPECK_VOLUME * largest.volumeMm3 &&
    across(body.boundsMm) <= SPECK_LENGTH * across(largest.boundsMm)
  const rest = joinBounds(bodies.filter((body) => !small(body)).map((body) => body.boundsMm))
  return bodies.flatMap((body, place) => {
    if (body.kind === 'sheet') return [{ place, gapMm: 0 }]
    if (!small(body)) return []
    const gapMm = boxGapMm(body.boundsMm, rest)
    return gapMm > across(body.boundsMm) ? [{ place, gapMm }] : []
  })
}

function specks({ bodies }: MeshJudgement): Finding | null {
  const all = findSpecks(bodies)
  const stray = all.filter(({ place }) => bodies[place]!.kind !== 'sheet')
  const sheets = all.filter(({ place }) => bodies[place]!.kind === 'sheet')
  if (all.length === 0) return null
  const sentences: string[] = []
  if (stray.length > 0) {
    const farthest = stray.reduce((most, { gapMm }) => Math.max(most, gapMm), 0)
    const volume = stray.reduce((sum, { place }) => sum + bodies[place]!.volumeMm3, 0)
    sentences.push(
      `${counted(stray.length, 'tiny loose body lies', 'tiny loose bodies lie')} up to ` +
        `${formatNumber(farthest, 'en')} mm away from the rest, ${formatVolume(volume, 'en')} in all.`,
    )
  }
  if (sheets.length > 0) {
    const triangles = sheets.reduce((sum, { place }) => sum + bodies[place]!.triangles, 0)
    sentences.push(
      `${counted(sheets.length, 'loose surface', 'loose surfaces')} of ` +
        `${counted(triangles, 'triangle', 'triangles')} ${sheets.length === 1 ? 'encloses' : 'enclose'} ` +
        `nothing and ${sheets.length === 1 ? 'weighs' : 'weigh'} nothing.`,
    )
  }
  const it = all.length === 1 ? 'it' : 'them'
  sentences.push(
    `The part’s size counts ${it} in. Most likely left over in the drawing: drop ${it} here, ` +
      `or delete ${it} there before you print.`,
  )
  return {
    code: 'stray-speck',
    grade: 'worth knowing',
    short: stray.length > 0 ? 'a tiny loose body' : 'a loose surface',
    count: all.length,
    ...placeOf([bodies[farthestOf(all)]!]),
    message: sentences.join(' '),
  }
}

function hairs({ hairs: found, keepsHairs, bodies }: MeshJudgement): Finding | null {
  if (found.length === 0) return null
  const volume = formatVolume(
    found.reduce((sum, { volumeMm3 }) => sum + volumeMm3, 0),
    'en',
  )
  const rest = joinBounds(bodies.filter((body) => !found.includes(body)).map((b) => b.boundsMm))
  const farthest = Math.max(...found.map(({ boundsMm }) => boxGapMm(boundsMm, rest)))
  const what =
    `${counted(found.length, 'closed body', 'closed bodies')} thinner than a line (${volume}), ` +
    `up to ${formatNumber(farthest, 'en')} mm off the rest`
  const one = found.length === 1
  const common = { code: 'hair', count: found.length, ...placeOf(found) } as const
  return keepsHairs
    ? {
        ...common,
        grade: 'cannot print',
        short: one ? 'a hair thinner than a line' : 'hairs thinner than a line',
        message:
          `${what}, ${one ? 'is' : 'are'} kept. Where one lies lowest it is the first layer, ` +
          'and the part hangs in the air above it.',
      }
    : {
        ...common,
        grade: 'worth knowing',
        short: one ? 'a hair left out' : `${found.length} hairs left out`,
        message:
          `${what}, ${one ? 'was' : 'were'} left out: as the lowest it would be the first layer and ` +
          `lift the part. Delete ${one ? 'it' : 'them'} in your drawing before you print, ` +
          `or keep ${one ? 'it' : 'them'} here.`,
      }
}

function unlikelySize({ boundsMm }: MeshJudgement): Finding | null {
  const longest = Math.max(...[0, 1, 2].map((k) => boundsMm.max[k]! - boundsMm.min[k]!))
  const size = formatNumber(longest, 'en')
  if (longest < SHORTEST_MM) {
    return {
      code: 'unlikely-size',
      grade: 'changes the grams',
      short: `only ${size} mm long`,
      message:
        `The longest side measures ${size} mm; ${EXPECTED}. ` +
        'The part was probably drawn in inches or metres: choose its unit.',
    }
  }
  if (longest > LONGEST_MM) {
    return {
      code: 'unlikely-size',
      grade: 'changes the grams',
      short: `${size} mm long`,
      message:
        `The longest side measures ${size} mm; ${EXPECTED}. ` +
        'The part was probably drawn in a smaller unit than it is read in: choose its unit.',
    }
  }
  return null
}

/** The largest of some bodies stands for them all. */
function placeOf(bodies: readonly BodyJudgement[]): { readonly place?: Bounds } {
  if (bodies.length === 0) return {}
  return { place: bodies.reduce((a, b) => (b.areaMm2 > a.areaMm2 ? b : a)).boundsMm }
}

const placed = (place: Bounds | null): { readonly place?: Bounds } =>
  place === null ? {} : { place }

const farthestOf = (all: readonly Speck[]): number =>
  all.reduce((a, b) => (b.gapMm > a.gapMm ? b : a)).place

const across = ({ min, max }: Bounds) =>
  Math.hypot(max[0] - min[0], max[1] - min[1], max[2] - min[2])

/** Distance between two boxes, 0 where they touch. */
export function boxGapMm(one: Bounds, other: Bounds): number {
  const gaps = [0, 1, 2].map((k) =>
    Math.max(0, other.min[k]! - one.max[k]!, one.min[k]! - other.max[k]!),
  )
  return Math.hypot(...gaps)
}
