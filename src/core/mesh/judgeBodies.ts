import type { Mesh } from '../model/mesh.ts'
import type { Bodies } from './bodies.ts'
import { mostLooks, searchNest } from './bodiesNest.ts'
import type { BodyJudgement } from './measureFindings.ts'
import { nestByLines } from './nestByLines.ts'
import type { BodySums } from './volume.ts'

/**
 * A body whose volume is below this share of its area^1.5 is a flat sheet (a ball has 0.094 of it).
 */
export const SHEET = 1e-9

interface Judged {
  readonly scaleToMm: number
  readonly bodies: readonly BodyJudgement[]
}

/**
 * Of a mesh in a million scraps a judgement takes a second, and facing, hairs and measures ask for
 * the same.
 */
const judgedLast = new WeakMap<BodySums, Judged>()

/** Says of each body which way it faces, what it is to the others, and its sums in mm. */
export function judgeBodies(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  scaleToMm: number,
): readonly BodyJudgement[] {
  const last = judgedLast.get(sums)
  if (last?.scaleToMm === scaleToMm) return last.bodies
  const judged = judgeEach(mesh, bodies, sums, scaleToMm)
  judgedLast.set(sums, { scaleToMm, bodies: judged })
  return judged
}

function judgeEach(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  scaleToMm: number,
): readonly BodyJudgement[] {
  /** 1 facing outwards in the file, −1 facing inwards, by most of its area; 0 a flat sheet. */
  const senses = new Int8Array(bodies.count)
  const solid = new Uint8Array(bodies.count)
  for (let body = 0; body < bodies.count; body++) {
    const volume = sums.volume[body]!
    if (Math.abs(volume) <= SHEET * sums.area[body]! ** 1.5) continue
    const asFirst = 2 * sums.turnedArea[body]! <= sums.area[body]!
    senses[body] = volume > 0 === asFirst ? 1 : -1
    solid[body] = 1
  }
  const { senseAround } = nestOf(mesh, bodies, sums, senses, solid)
  const reverse = findReverseCopies(sums, senses)
  const judged: BodyJudgement[] = []
  for (let body = 0; body < bodies.count; body++) {
    const outside = senseAround[body]!
    const inside = outside + senses[body]!
    const kind = reverse.has(body)
      ? 'reverse copy'
      : Math.abs(inside) < Math.abs(outside)
        ? 'cavity'
        : solid[body] === 0
          ? 'sheet'
          : outside !== 0
            ? 'buried'
            : 'solid'
    const asFirst = 2 * sums.turnedArea[body]! <= sums.area[body]!
    const triangles = sums.triangles[body]!
    const turned = sums.turnedTriangles[body]!
    judged.push({
      kind,
      insideOut: kind === 'solid' && senses[body] === -1,
      volumeMm3: Math.abs(sums.volume[body]!) * scaleToMm ** 3,
      areaMm2: sums.area[body]! * scaleToMm ** 2,
      triangles,
      wrongWay: asFirst ? turned : triangles - turned,
      boundsMm: {
        min: corner(sums.bounds, 6 * body, scaleToMm),
        max: corner(sums.bounds, 6 * body + 3, scaleToMm),
      },
    })
  }
  return judged
}

/** What bodies are inside of. */
interface Nest {
  /** The senses of all bodies around each, added up: how deep in material its outside is. */
  readonly senseAround: Int32Array
  /** All bodies were looked at; there may be too many in one another for that. */
  readonly isWhole: boolean
}

/**
 * Pair by pair, which holds for bodies that cut one another too: some 700 shells each inside the
 * next. Of more, lines are tried first.
 */
const FEW_LOOKS = 10_000_000

/**
 * A mesh is judged several times on its way from bytes to figures, and who holds whom takes most of
 * it.
 */
const known = new WeakMap<BodySums, Nest>()

function nestOf(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  senses: Int8Array,
  solid: Uint8Array,
): Nest {
  const before = known.get(sums)
  if (before !== undefined) return before
  const search = searchNest(mesh, bodies, sums, solid)
  const left = mostLooks(mesh)
  const byLines =
    search.looks > FEW_LOOKS ? nestByLines(mesh, bodies, sums, senses, solid, { left }) : null
  const nest = byLines === null ? lookThrough() : { senseAround: byLines, isWhole: true }
  known.set(sums, nest)
  return nest

  function lookThrough(): Nest {
    const effort = { left }
    const senseAround = new Int32Array(bodies.count)
    search.eachHeld(effort, (held, holder) => {
      senseAround[held]! += senses[holder]!
    })
    return { senseAround, isWhole: effort.left >= 0 }
  }
}

/** Whether it is known of all bodies what they are inside of; asked after they were judged. */
export function isNestKnown(sums: BodySums): boolean {
  return known.get(sums)?.isWhole ?? true
}

/**
 * Bodies that lie triangle on triangle on another one, facing the other way: what a drawing program
 * writes for a two-sided surface. Together they would cancel or count twice.
 */
function findReverseCopies(sums: BodySums, senses: Int8Array): Set<number> {
  const reverse = new Set<number>()
  const outward: number[] = []
  const inward: number[] = []
  for (let body = 0; body < senses.length; body++) {
    if (senses[body] === 0 || sums.backedTriangles[body] !== sums.triangles[body]) continue
    if (senses[body] === 1) outward.push(body)
    else inward.push(body)
  }
  for (const body of inward) {
    const original = outward.findIndex((other) => sameBounds(sums.bounds, body, other))
    if (original < 0) continue
    reverse.add(body)
    outward.splice(original, 1)
  }
  return reverse
}

function sameBounds(bounds: Float64Array, one: number, other: number): boolean {
  for (let k = 0; k < 6; k++) if (bounds[6 * one + k] !== bounds[6 * other + k]) return false
  return true
}

const corner = (bounds: Float64Array, at: number, scale: number) =>
  [bounds[at]! * scale, bounds[at + 1]! * scale, bounds[at + 2]! * scale] as const
