import type { Mesh } from '../model/mesh.ts'
import { NO_BODY, type Bodies } from './bodies.ts'
import { within, type NestEffort } from './bodiesNest.ts'
import { facesUp, heightAt } from './overPoint.ts'
import { sortFromAbove } from './sortFromAbove.ts'
import type { BodySums } from './volume.ts'

/** What holds a body: no other, or not known yet; else the number of the one that does. */
const NOTHING = -1
const UNKNOWN = -2

/**
 * The senses of all bodies around each, added up, as `eachHeld` would tell them where no two bodies
 * cut or touch. A line goes up through each body that no line before it went through. Along it
 * bodies are entered and left like brackets, which says of all of them at once what holds them; so
 * a nest of n shells takes one line, and bodies side by side take short ones. Null where brackets
 * do not match, bounds stick out or `effort` ends.
 *
 * @param senses 1 facing outwards in the file, −1 facing inwards.
 * @param solid 1 for each body that holds or is held.
 */
export function nestByLines(
  mesh: Mesh,
  bodies: Bodies,
  sums: BodySums,
  senses: Int8Array,
  solid: Uint8Array,
  effort: NestEffort,
): Int32Array | null {
  const holders = new Int32Array(bodies.count).fill(UNKNOWN)
  const crossingsAt = crossingFinder(mesh, bodies, sums, solid, effort)
  const widest = widestFromAbove(mesh, bodies)
  for (let body = 0; body < bodies.count; body++) {
    if (solid[body] === 0 || holders[body] !== UNKNOWN) continue
    const crossings = crossingsAt(...middleOf(mesh, widest[body]!))
    if (effort.left < 0 || !matchBrackets(crossings, holders)) return null
    if (holders[body] === UNKNOWN) return null
  }
  return addSenses(sums, senses, solid, holders)
}

interface Crossing {
  readonly body: number
  readonly z: number
  readonly isEntered: boolean
}

/** Finds where the line up through (x, y) crosses solid bodies, from below. */
function crossingFinder(
  { positions, indices }: Mesh,
  bodies: Bodies,
  sums: BodySums,
  solid: Uint8Array,
  effort: NestEffort,
): (x: number, y: number) => readonly Crossing[] {
  const triangles = sortFromAbove({ positions, indices }, bodies, solid)
  return (x, y) => {
    const crossings: Crossing[] = []
    triangles.at(x, y, (t) => {
      effort.left--
      const [a, b, c] = [3 * indices[3 * t]!, 3 * indices[3 * t + 1]!, 3 * indices[3 * t + 2]!]
      const z = heightAt(positions, a, b, c, x, y)
      if (Number.isNaN(z)) return
      const body = bodies.bodyOf[t]!
      const asFirst = facesUp(positions, a, b, c) !== (bodies.turned[t] === 1)
      crossings.push({ body, z, isEntered: asFirst !== sums.volume[body]! > 0 })
    })
    return crossings.sort((one, other) => one.z - other.z)
  }
}

/** Notes what holds each body that is entered; false where they do not lie in one another. */
function matchBrackets(crossings: readonly Crossing[], holders: Int32Array): boolean {
  const inside: number[] = []
  for (const { body, isEntered } of crossings) {
    if (!isEntered) {
      if (inside.pop() !== body) return false
      continue
    }
    const holder = inside.at(-1) ?? NOTHING
    if (holders[body] === UNKNOWN) holders[body] = holder
    else if (holders[body] !== holder) return false
    inside.push(body)
  }
  return inside.length === 0
}

/** Of each body the triangle that covers most, seen from above. */
function widestFromAbove({ positions, indices }: Mesh, { count, bodyOf }: Bodies): Uint32Array {
  const widest = new Uint32Array(count)
  const covered = new Float64Array(count).fill(-1)
  bodyOf.forEach((body, t) => {
    if (body === NO_BODY) return
    const [a, b, c] = [3 * indices[3 * t]!, 3 * indices[3 * t + 1]!, 3 * indices[3 * t + 2]!]
    const [ux, uy] = [positions[b]! - positions[a]!, positions[b + 1]! - positions[a + 1]!]
    const [vx, vy] = [positions[c]! - positions[a]!, positions[c + 1]! - positions[a + 1]!]
    const area = Math.abs(ux * vy - uy * vx)
    if (area <= covered[body]!) return
    covered[body] = area
    widest[body] = t
  })
  return widest
}

function middleOf({ positions, indices }: Mesh, t: number): readonly [number, number] {
  const [a, b, c] = [3 * indices[3 * t]!, 3 * indices[3 * t + 1]!, 3 * indices[3 * t + 2]!]
  return [
    (positions[a]! + positions[b]! + positions[c]!) / 3,
    (positions[a + 1]! + positions[b + 1]! + positions[c + 1]!) / 3,
  ]
}

function addSenses(
  sums: BodySums,
  senses: Int8Array,
  solid: Uint8Array,
  holders: Int32Array,
): Int32Array | null {
  const senseAround = new Int32Array(senses.length)
  const isKnown = new Uint8Array(senses.length)
  for (let body = 0; body < senses.length; body++) {
    if (solid[body] === 0) continue
    const way: number[] = []
    for (let at = body; at !== NOTHING && isKnown[at] === 0; at = holders[at]!) {
      way.push(at)
      const holder = holders[at]!
      if (way.length > senses.length) return null
      if (holder !== NOTHING && !within(sums.bounds, at, holder)) return null
    }
    for (const each of way.toReversed()) {
      const holder = holders[each]!
      senseAround[each] = holder === NOTHING ? 0 : senseAround[holder]! + senses[holder]!
      isKnown[each] = 1
    }
  }
  return senseAround
}
