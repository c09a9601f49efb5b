import type { LengthUnit } from '../model/mesh.ts'
import { breach, type Subject } from './breach.ts'
import { addFloats, growingFloats, growingWholes, reserve } from './grow.ts'
import type { Growing } from './grow.ts'
import { MAX_COORDINATE, MAX_TRIANGLES } from './limits.ts'
import { grouped } from '../words/counts.ts'
import { refuse, refuseTooMany } from './refuse.ts'
import { extensionName } from './threemfExtensions.ts'
import { determinant, IDENTITY } from './transform.ts'
import type { Transform } from './transform.ts'
import { readXml } from './xml.ts'
import type { Attributes } from './xml.ts'

/** One model part of a 3MF package, as written; nothing is placed or looked up yet. */
export interface ModelPart {
  readonly unit: LengthUnit
  readonly objects: ReadonlyMap<string, ModelObject>
  readonly items: readonly Placement[]
  /** Namespaces the part says a reader must know and this one does not. */
  readonly unknownExtensions: readonly string[]
  /** Namespaces of extensions that hold shape, declared anywhere in the part, required or not. */
  readonly shapeExtensions: ReadonlySet<string>
}

/** A mesh, or components, or both empty. */
export interface ModelObject {
  readonly id: string
  readonly name: string
  /** The "object type": model, support, solidsupport, surface or other. */
  readonly type: string
  readonly positions: Growing<Float64Array>
  readonly triangles: Growing<Uint32Array>
  readonly components: Placement[]
}

/** A component or a build item: an object put somewhere. */
export interface Placement {
  readonly objectId: string
  /** Model part the object is in, where it is not this one (3MF Production Extension). */
  readonly path: string | null
  readonly name: string
  readonly transform: Transform
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02'
/** Extensions that change nothing about the solid: where parts are kept, and colours. */
const HARMLESS = new Set([
  'http://schemas.microsoft.com/3dmanufacturing/production/2015/06',
  'http://schemas.microsoft.com/3dmanufacturing/material/2015/02',
])
const UNITS: ReadonlyMap<string, LengthUnit> = new Map([
  ['micron', 'micron'],
  ['millimeter', 'millimetre'],
  ['centimeter', 'centimetre'],
  ['inch', 'inch'],
  ['foot', 'foot'],
  ['meter', 'metre'],
])

/**
 * Reads one model part. `path` is the part's name inside the package, for messages.
 * Throws `bad-xml`, `bad-3mf`, `bad-number`, `not-finite`, `bad-index`, `too-large`.
 */
export function readModelPart(xml: Uint8Array, path: string, name: string): ModelPart {
  const open: string[] = []
  const objects = new Map<string, ModelObject>()
  const items: Placement[] = []
  let unit: LengthUnit = 'millimetre'
  let unknownExtensions: readonly string[] = []
  const shapeExtensions = new Set<string>()
  let prefix = ''
  let object: ModelObject | null = null
  let where = () => ''

  readXml(xml, path, name, (position) => {
    where = position
    return { open: openElement, close: closeElement }
  })
  return { unit, objects, items, unknownExtensions, shapeExtensions }

  function openElement(tag: string, attributes: Attributes): void {
    const parent = open.at(-1)
    // A mesh's own elements, the many ones, declare nothing.
    if (parent !== 'vertices' && parent !== 'triangles') noteExtensions(attributes)
    if (parent === undefined) prefix = corePrefix(tag, attributes)
    const element = tag.startsWith(prefix) ? tag.slice(prefix.length) : `?${tag}`
    open.push(element)
    // Other extensions use the same words elsewhere, so a vertex counts only in an object's mesh.
    if (parent === 'vertices') {
      if (element === 'vertex' && object !== null && open.at(-3) === 'mesh') {
        addVertex(object.positions, attributes)
      }
    } else if (parent === 'triangles') {
      if (element === 'triangle' && object !== null && open.at(-3) === 'mesh') {
        addTriangle(object.triangles, attributes)
      }
    } else if (parent === 'components') {
      if (element === 'component' && object !== null) {
        object.components.push(placement(attributes, 'component'))
      }
    } else if (parent === 'build') {
      if (element === 'item') items.push(placement(attributes, 'build item'))
    } else if (parent === 'resources') {
      if (element === 'object') object = newObject(attributes)
    } else if (parent === undefined) {
      if (element !== 'model')
        fail('the model element', `"${path}" is a <${tag}> and not a 3MF model.`)
      const spelled = attributes['unit'] ?? 'millimeter'
      unit =
        UNITS.get(spelled) ??
        fail('the model element', `The unit "${spelled}" in "${path}" is none of 3MF's six.`)
      unknownExtensions = unknownRequired(attributes)
    }
  }

  function noteExtensions(attributes: Attributes): void {
    for (const [key, value] of Object.entries(attributes)) {
      if (!key.startsWith('xmlns')) continue
      if (value !== undefined && extensionName(value) !== null) shapeExtensions.add(value)
    }
  }

  function closeElement(): void {
    if (open.pop() !== 'object' || open.at(-1) !== 'resources' || object === null) return
    checkIndices(object)
    object = null
  }

  function addVertex(positions: Growing<Float64Array>, attributes: Attributes): void {
    const vertex = positions.length / 3
    addFloats(
      positions,
      coordinate(attributes['x'], 'x', vertex),
      coordinate(attributes['y'], 'y', vertex),
      coordinate(attributes['z'], 'z', vertex),
    )
  }

  function fail(subject: Subject, what: string): never {
    refuse(name, 'bad-3mf', what, breach(subject))
  }

  function coordinate(text: string | undefined, axis: string, vertex: number): number {
    const value = text === undefined || text === '' ? NaN : Number(text)
    if (Math.abs(value) <= MAX_COORDINATE && !text!.includes('x')) return value
    refuseCoordinate(text, `${axis} of vertex ${grouped(vertex)} ${where()}`)
  }

  function refuseCoordinate(text: string | undefined, place: string): never {
    if (text === undefined) fail('vertices', `There is no ${place}.`)
    if (/^\s*[-+]?\d*,\d/.test(text ?? '')) {
      refuse(
        name,
        'bad-number',
        `There is a decimal comma in ${place}: "${text}".`,
        'Export it again with decimal points; set the program or the system to a language that writes 1.5.',
      )
    }
    const finite = !/nan|inf/i.test(text ?? '') && !(Math.abs(Number(text)) > MAX_COORDINATE)
    refuse(
      name,
      finite ? 'bad-number' : 'not-finite',
      `"${text}" is no coordinate, in ${place}.`,
      'Repair the model where it was drawn and export it again.',
    )
  }

  function addTriangle(triangles: Growing<Uint32Array>, attributes: Attributes): void {
    if (triangles.length >= 3 * MAX_TRIANGLES) refuseTooMany(name, triangles.length / 3)
    reserve(triangles, 3)
    for (const key of ['v1', 'v2', 'v3']) {
      const text = attributes[key] ?? ''
      const value = Number(text)
      if (!/^\s*\d+\s*$/.test(text) || value > 0xffff_fffe) {
        refuse(
          name,
          'bad-index',
          `${key} of triangle ${grouped(Math.floor(triangles.length / 3))} is "${text}" and no vertex ` +
            `number, ${where()}.`,
          breach('triangles'),
        )
      }
      triangles.data[triangles.length++] = value
    }
  }

  function checkIndices({ id, positions, triangles }: ModelObject): void {
    const vertices = positions.length / 3
    for (let i = 0; i < triangles.length; i++) {
      if (triangles.data[i]! < vertices) continue
      refuse(
        name,
        'bad-index',
        `Triangle ${grouped(Math.floor(i / 3))} of object ${id} in "${path}" names vertex ` +
          `${grouped(triangles.data[i]!)}, and its ${grouped(vertices)} vertices count from 0.`,
        breach('triangles'),
      )
    }
  }

  function newObject(attributes: Attributes): ModelObject {
    const id = attributes['id'] ?? fail('objects', `An object has no id ${where()}.`)
    if (objects.has(id)) fail('objects', `There are two objects with the id ${id} in "${path}".`)
    const added: ModelObject = {
      id,
      name: attributes['name'] ?? attributes['partnumber'] ?? '',
      type: attributes['type'] ?? 'model',
      positions: growingFloats(),
      triangles: growingWholes(),
      components: [],
    }
    objects.set(id, added)
    return added
  }

  function placement(attributes: Attributes, kind: string): Placement {
    const objectId =
      attributes['objectid'] ??
      fail(
        kind === 'component' ? 'components' : 'build items',
        `A ${kind} has no objectid ${where()}.`,
      )
    const pathKey = Object.keys(attributes).find((key) => key.endsWith(':path'))
    return {
      objectId,
      path: pathKey === undefined ? null : (attributes[pathKey] ?? null),
      name: attributes['partnumber'] ?? '',
      transform: transformOf(attributes['transform'], kind),
    }
  }

  function transformOf(text: string | undefined, kind: string): Transform {
    if (text === undefined) return IDENTITY
    const words = text.trim().split(/\s+/)
    const numbers = words.map(Number)
    if (words.length !== 12 || !numbers.every((value) => Math.abs(value) <= MAX_COORDINATE)) {
      fail(
        '3D matrices',
        `The transform of a ${kind} has to be 12 numbers and is "${text.slice(0, 80)}" ` +
          `(${grouped(words.length)} words) ${where()}.`,
      )
    }
    if (determinant(numbers) === 0) {
      fail('3D matrices', `The transform of a ${kind} flattens it to nothing ${where()}.`)
    }
    return numbers
  }
}

/**
 * The prefix, colon included, of the core namespace; of the root element where it is not declared.
 */
function corePrefix(tag: string, attributes: Attributes): string {
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== CORE) continue
    if (key === 'xmlns') return ''
    if (key.startsWith('xmlns:')) return `${key.slice(6)}:`
  }
  return tag.slice(0, tag.indexOf(':') + 1)
}

function unknownRequired(attributes: Attributes): readonly string[] {
  const prefixes = (attributes['requiredextensions'] ?? '').split(/\s+/).filter((p) => p !== '')
  return prefixes
    .map((prefix) => attributes[`xmlns:${prefix}`] ?? prefix)
    .filter((namespace) => !HARMLESS.has(namespace))
}
