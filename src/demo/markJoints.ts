import { itemPieces } from '../core/joints/itemPieces.ts'
import { itemMesh } from '../core/joints/itemMesh.ts'
import { readMesh } from '../core/formats/read.ts'
import type { Hole } from '../core/mesh/holes/findHoles.ts'
import type { BoreMark, Joint, JointEnd } from '../core/model/joints.ts'
import type { Mesh, Vec3 } from '../core/model/mesh.ts'
import { unitToMm } from '../core/model/units.ts'
import type { Aircraft, DrawnPart } from './aircraft.ts'
import type { DrawnEnd } from './joints.ts'
import { mouthNear, type Mouth } from './mouthNear.ts'
import { tidy } from './tidy.ts'
import { rescale } from './write.ts'

/**
 * The joints of an aircraft with the bores that its files are found to have: a drawing points at
 * them, their sizes are told by the meshes alone. Marks are in mm as a part is first taken, which
 * for one drawn in inches is 25.4 times too small.
 *
 * @param files each part's file as bytes, by its name.
 * @throws Error where a drawing points at no bore, or at no part.
 */
export function markJoints(
  { parts, joints, drawnIn, about }: Aircraft,
  files: ReadonlyMap<string, Uint8Array>,
): readonly Joint[] {
  const known = new Map<string, Marked>()
  const bought = itemPieces(about.aircraft.items)
  const marked = (name: string): Marked => {
    const before = known.get(name)
    if (before !== undefined) return before
    const item = bought.find((each) => each.name === name)
    if (item !== undefined) {
      const near = mouthNear(itemMesh(item.body))
      const made = { partId: item.id, part: item, near, scale: 1 }
      known.set(name, made)
      return made
    }
    const part = parts.find((each) => each.name === name)
    const bytes = part === undefined ? undefined : files.get(part.file)
    if (part === undefined || bytes === undefined) throw new Error(`There is no part “${name}”.`)
    const read = readMesh(bytes, part.file)
    const drawn = unitToMm(drawnIn[name] ?? read.unit ?? part.unit)
    const taken = unitToMm(part.unit)
    const mesh: Mesh = rescale(read.mesh, drawn)
    const made = { partId: name, part, near: mouthNear(mesh), scale: taken / drawn }
    known.set(name, made)
    return made
  }
  return joints.map(({ a, b, gapMm, fastener, turnDeg = 0 }, i): Joint => {
    const [partA, partB] = [marked(a.part), marked(b.part)]
    return {
      id: `joint-${i + 1}`,
      a: endOf(a, partA),
      b: endOf(b, partB),
      kind: a.mouths.length === 0 ? 'faces' : 'bores',
      mirrored: isMirrored(a, partA) !== isMirrored(b, partB),
      turnDeg,
      slideMm: 0,
      gapMm,
      fastener,
    }
  })
}

interface Marked {
  readonly partId: string
  readonly part: Pick<DrawnPart, 'quantity' | 'mirrored'>
  readonly near: (point: Vec3) => Mouth
  /** Mm as taken in one mm as drawn. */
  readonly scale: number
}

/** The last pieces of a part are the mirrored ones. */
function isMirrored({ piece }: DrawnEnd, { part }: Marked): boolean {
  return piece >= part.quantity - part.mirrored
}

function endOf(end: DrawnEnd, { partId, near, scale }: Marked): JointEnd {
  const { part, piece, mouths, normal, behindMm = 0, on } = end
  if (on !== undefined && normal !== null) {
    return { partId, piece, bores: [], face: { pointMm: tidied(on, (at) => scale * at), normal } }
  }
  const found = mouths.map(near)
  const [first] = found
  if (first === undefined) throw new Error(`A joint of “${part}” points at no bore.`)
  const bores = found.map(({ bore }) => markOf(bore, scale))
  const face =
    normal === null
      ? null
      : {
          pointMm: tidied(first.at, (at, k) => scale * (at - behindMm * (normal[k] ?? 0))),
          normal,
        }
  return { partId, piece, bores, face }
}

function markOf(
  { axis, centre, diameter, depth, openLow, openHigh }: Hole,
  scale: number,
): BoreMark {
  return {
    kind: 'bore',
    centreMm: tidied(centre, (at) => scale * at),
    axis: tidied(axis, (at) => at),
    diameterMm: tidy(scale * diameter),
    depthMm: tidy(scale * depth),
    openLow,
    openHigh,
  }
}

function tidied([x, y, z]: Vec3, of: (value: number, axis: number) => number): Vec3 {
  return [tidy(of(x, 0)), tidy(of(y, 1)), tidy(of(z, 2))]
}
