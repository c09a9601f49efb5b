import { weldSoup } from '../model/weld.ts'
import type { Finding, MeshPiece, ReadMesh } from '../model/mesh.ts'
import { PreweighError } from '../model/problem.ts'
import { unitToMm } from '../model/units.ts'
import { breach } from './breach.ts'
import { MAX_COMPONENT_DEPTH, MAX_COORDINATE, MAX_TRIANGLES } from './limits.ts'
import { counted, grouped } from '../words/counts.ts'
import { refuse, refuseTooMany } from './refuse.ts'
import type { ModelObject, ModelPart, Placement } from './threemfModel.ts'
import { CONTENT_TYPES, openPackage, partKey, ROOT_RELATIONS } from './threemfPackage.ts'
import type { ModelPackage } from './threemfPackage.ts'
import { extensionTitle } from './threemfExtensions.ts'
import { chain, determinant, IDENTITY, scaling } from './transform.ts'
import type { Transform } from './transform.ts'
import { isZip, listEntries } from './zip.ts'

/**
 * A ZIP with the parts of a 3MF package at its root. A ZIP whose directory is broken is nobody's.
 */
export function looksLike3mf(bytes: Uint8Array): boolean {
  if (!isZip(bytes)) return false
  try {
    const paths = listEntries(bytes, '').map(({ path }) => partKey(path))
    const isPackage = paths.includes(ROOT_RELATIONS) || paths.includes(CONTENT_TYPES)
    return isPackage && paths.some((path) => path.endsWith('.model'))
  } catch (error) {
    if (error instanceof PreweighError) return false
    throw error
  }
}

/**
 * Reads everything a 3MF package builds as one mesh in the root model's unit, one piece per build
 * item. Objects that are supports or otherwise no part of the model are left out with a finding;
 * mirrored ones keep their outside outside. Colours and materials are not used. Throws
 * `bad-archive`, `bad-xml`, `bad-3mf`, `bad-index`, `bad-number`, `not-finite`, `no-triangles`,
 * `too-large`.
 */
export function read3mf(bytes: Uint8Array, name: string): ReadMesh {
  const models = openPackage(bytes, name)
  const root = models.part(models.rootPath)
  const plan = newPlan(models, name)
  const triangles = root.items.reduce((sum, item) => sum + survey(plan, item, root).triangles, 0)
  if (triangles > MAX_TRIANGLES) refuseTooMany(name, triangles)
  if (triangles === 0) {
    refuseEmpty(plan, root)
  }

  const soup: Soup = { data: new Float64Array(9 * triangles), length: 0, mirrored: false }
  const pieces: MeshPiece[] = []
  let mirrored = 0
  root.items.forEach((item, i) => {
    const firstTriangle = soup.length / 9
    soup.mirrored = false
    const object = place(plan, item, root, IDENTITY, soup)
    const triangleCount = soup.length / 9 - firstTriangle
    if (triangleCount === 0) return
    if (soup.mirrored) mirrored++
    pieces.push({ name: item.name || object.name || `item ${i + 1}`, firstTriangle, triangleCount })
  })
  checkFinite(soup, name)
  return {
    format: '3mf',
    mesh: weldSoup(soup.data),
    unit: root.unit,
    pieces,
    findings: [...planFindings(plan, root), ...mirrorFindings(mirrored, root.items.length)],
  }
}

/**
 * Says where the shape is, if an extension holds it: such a file is sound, and only not made of
 * triangles.
 */
function refuseEmpty({ name, parts, skipped }: Plan, root: ModelPart): never {
  const all = [...parts, root]
  const required = new Set(all.flatMap((part) => part.unknownExtensions))
  const declared = new Set(all.flatMap((part) => [...part.shapeExtensions]))
  const extensions = [...(required.size > 0 ? required : declared)].map(extensionTitle)
  const holds =
    `It has ${counted(root.objects.size, 'object')} and ${counted(root.items.length, 'build item')}, ` +
    'and not one triangle to print'
  if (extensions.length > 0) {
    refuse(
      name,
      'no-triangles',
      `${holds}: its shape is in the 3MF ${extensions.join(' and the ')}, ` +
        `which ${extensions.length === 1 ? 'is' : 'are'} not read here.`,
      'Export the part again as a plain mesh: 3MF without that extension, or STL.',
    )
  }
  const types = [...skipped].map(({ type }) => type)
  refuse(
    name,
    'no-triangles',
    `${holds}${types.length > 0 ? `; left out: ${types.join(', ')}` : ''}.`,
    'Export the part again with the body selected.',
  )
}

/** What is found out about a package's objects before any triangle is placed. */
interface Plan {
  readonly models: ModelPackage
  readonly name: string
  readonly surveys: Map<ModelObject, Survey>
  /** Objects on the way down from the build item, for noticing one that contains itself. */
  readonly path: ModelObject[]
  readonly skipped: Set<ModelObject>
  readonly parts: Set<ModelPart>
}

interface Survey {
  /** Triangles in all, components counted as often as they are placed. */
  readonly triangles: number
  /** Levels of components below. */
  readonly height: number
}

interface Soup {
  readonly data: Float64Array
  length: number
  /** Whether a mesh was turned inside out and set right since the flag was cleared. */
  mirrored: boolean
}

function newPlan(models: ModelPackage, name: string): Plan {
  return { models, name, surveys: new Map(), path: [], skipped: new Set(), parts: new Set() }
}

function resolve(plan: Plan, placement: Placement, from: ModelPart) {
  const part = placement.path === null ? from : plan.models.part(placement.path)
  const object = part.objects.get(placement.objectId)
  if (object === undefined) {
    refuse(
      plan.name,
      'bad-3mf',
      `A component or build item names object ${placement.objectId}, ` +
        `and ${placement.path === null ? 'its model part' : `"${placement.path}"`} has ` +
        `${counted(part.objects.size, 'object')}, none with that id.`,
      breach(plan.path.length === 0 ? 'build items' : 'components'),
    )
  }
  return { part, object }
}

/**
 * Counts what a placement will add, so that components that multiply without end are refused before
 * they do.
 */
function survey(plan: Plan, placement: Placement, from: ModelPart): Survey {
  const { part, object } = resolve(plan, placement, from)
  plan.parts.add(part)
  if (plan.path.includes(object)) {
    const ids = [...plan.path.slice(plan.path.indexOf(object)), object].map(({ id }) => id)
    refuse(
      plan.name,
      'bad-3mf',
      `Object ${object.id} contains itself through its components: ${ids.join(' → ')}.`,
      breach('components'),
    )
  }
  const known = plan.surveys.get(object)
  if (known !== undefined) return known
  if (object.type !== 'model') {
    plan.skipped.add(object)
    return { triangles: 0, height: 0 }
  }
  plan.path.push(object)
  let triangles = object.triangles.length / 3
  let height = 0
  for (const component of object.components) {
    if (plan.path.length > MAX_COMPONENT_DEPTH) refuseDepth(plan)
    const below = survey(plan, component, part)
    triangles += below.triangles
    height = Math.max(height, below.height + 1)
  }
  plan.path.pop()
  if (height > MAX_COMPONENT_DEPTH) refuseDepth(plan)
  const result = { triangles, height }
  plan.surveys.set(object, result)
  return result
}

function refuseDepth({ name }: Plan): never {
  refuse(
    name,
    'bad-3mf',
    `Its components are nested deeper than ${MAX_COMPONENT_DEPTH} levels.`,
    'Export the part again as one mesh.',
  )
}

/**
 * Adds a placement's triangles to the soup; returns its object. Placements without triangles cost
 * no time.
 */
function place(
  plan: Plan,
  placement: Placement,
  from: ModelPart,
  outer: Transform,
  soup: Soup,
): ModelObject {
  const { part, object } = resolve(plan, placement, from)
  if ((plan.surveys.get(object)?.triangles ?? 0) === 0) return object
  const rescale = unitToMm(part.unit) / unitToMm(from.unit)
  const inner = rescale === 1 ? placement.transform : chain(scaling(rescale), placement.transform)
  const transform = chain(inner, outer)
  addMesh(object, transform, soup)
  for (const component of object.components) place(plan, component, part, transform, soup)
  return object
}

function addMesh(object: ModelObject, m: Transform, soup: Soup): void {
  const { data } = soup
  const indices = object.triangles.data
  const positions = object.positions.data
  const count = object.triangles.length
  // A mirror image winds the other way round: its corners go in backwards so that outside stays
  // outside.
  const mirrored = determinant(m) < 0
  if (mirrored && count > 0) soup.mirrored = true
  let to = soup.length
  for (let i = 0; i < count; i += 3) {
    for (let k = 0; k < 3; k++) {
      const v = 3 * indices[i + (mirrored ? 2 - k : k)]!
      const x = positions[v]!
      const y = positions[v + 1]!
      const z = positions[v + 2]!
      data[to++] = x * m[0]! + y * m[3]! + z * m[6]! + m[9]!
      data[to++] = x * m[1]! + y * m[4]! + z * m[7]! + m[10]!
      data[to++] = x * m[2]! + y * m[5]! + z * m[8]! + m[11]!
    }
  }
  soup.length = to
}

function checkFinite({ data }: Soup, name: string): void {
  const bad = data.findIndex((value) => !(Math.abs(value) <= MAX_COORDINATE))
  if (bad < 0) return
  refuse(
    name,
    'not-finite',
    `A transform moves triangle ${grouped(Math.floor(bad / 9) + 1)} of ${grouped(data.length / 9)} to ` +
      `${data[bad]}, beyond every coordinate.`,
    'Repair the model where it was drawn and export it again.',
  )
}

function planFindings(plan: Plan, root: ModelPart): Finding[] {
  const findings: Finding[] = []
  if (plan.skipped.size > 0) {
    const types = [...new Set([...plan.skipped].map(({ type }) => `"${type}"`))].join(', ')
    findings.push({
      code: 'skipped-content',
      grade: 'worth knowing',
      short: `${types} left out`,
      message:
        `${counted(plan.skipped.size, 'object')} of the object type ${types} ` +
        `${plan.skipped.size === 1 ? 'was' : 'were'} left out: ` +
        'only "model" is part of the solid.',
      count: plan.skipped.size,
    })
  }
  const extensions = new Set([...plan.parts, root].flatMap((part) => part.unknownExtensions))
  if (extensions.size > 0) {
    findings.push({
      code: 'skipped-content',
      grade: 'changes the grams',
      short: 'shape in an extension not read here',
      message:
        `It needs ${counted(extensions.size, '3MF extension')} not read here ` +
        `(${[...extensions].map(extensionTitle).join(', ')}): what they add to the solid is missing ` +
        'here. Export the part again as a plain mesh.',
      count: extensions.size,
    })
  }
  const otherUnits = [...plan.parts].filter(({ unit }) => unit !== root.unit)
  if (otherUnits.length > 0) {
    findings.push({
      code: 'not-millimetres',
      grade: 'worth knowing',
      short: 'several units in one file',
      message:
        `The main model is in ${root.unit} and ${counted(otherUnits.length, 'other model part')} in ` +
        `${otherUnits.map(({ unit }) => unit).join(', ')}: each was taken at its word. Check the size.`,
      count: otherUnits.length,
    })
  }
  const breaches = [
    ...plan.models.lacks.map((what) => `the package lacks ${what}`),
    ...[...plan.parts].flatMap(forwardReferences),
  ]
  if (breaches.length > 0) {
    findings.push({
      code: 'off-standard',
      grade: 'note',
      short: 'off the 3MF standard',
      message:
        `It does not keep to the 3MF standard: ${breaches.join('; ')}. ` +
        'Its meaning is clear all the same, so it was read; nothing to do.',
      count: breaches.length,
    })
  }
  return findings
}

/**
 * The standard lets components name only objects that come before them, which rules out circles;
 * ours looks for circles itself.
 */
function forwardReferences({ objects }: ModelPart): string[] {
  const before = new Set<string>()
  const found: string[] = []
  for (const [id, { components }] of objects) {
    const late = components.filter(({ path, objectId }) => path === null && !before.has(objectId))
    if (late.length > 0) {
      found.push(
        `object ${id} is made of objects that come after it (${late.map(({ objectId }) => objectId).join(', ')})`,
      )
    }
    before.add(id)
  }
  return found
}

function mirrorFindings(mirrored: number, items: number): Finding[] {
  if (mirrored === 0) return []
  return [
    {
      code: 'mirrored-item',
      grade: 'note',
      short: 'mirrored items',
      message:
        `${counted(mirrored, 'build item')} of ${grouped(items)} ${mirrored === 1 ? 'is' : 'are'} a ` +
        'mirror image of the mesh in the file; the faces were turned so that outside stays outside.',
      count: mirrored,
    },
  ]
}
