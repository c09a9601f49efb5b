import type { Frame } from '../../src/core/model/frame.ts'
import type { Session } from '../../src/state/actions/types.ts'
import type { Path } from './limitPlaces.ts'

type Key = string | number

/** The only key where `*` stands. */
function keyIn(value: object, key: Key): Key {
  return key === '*' ? (Object.keys(value)[0] ?? key) : key
}

export function valueAt(frame: Frame, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) => (value as Record<Key, unknown>)[keyIn(value as object, key)],
    frame,
  )
}

export function withValueAt(frame: Frame, path: Path, value: unknown): Frame {
  return put(frame, path, value) as Frame
}

function put(into: unknown, [key, ...rest]: readonly Key[], value: unknown): unknown {
  if (key === undefined) return value
  if (Array.isArray(into)) {
    return into.map((each: unknown, i) => (i === key ? put(each, rest, value) : each))
  }
  const fields = into as Readonly<Record<Key, unknown>>
  const own = keyIn(fields, key)
  return { ...fields, [own]: put(fields[own], rest, value) }
}

/**
 * Puts a value at its place through the action that the page has for it; false where there is none.
 */
export function putInFrame(actions: Session, frame: Frame, path: Path, value: unknown): boolean {
  const next = withValueAt(frame, path, value)
  const [root, at, key] = path
  if (root === 'name') actions.renameFrame(next.name)
  else if (root === 'printer') actions.putPrinter(next.printer)
  else if (root === 'printers') actions.putPrinters(next.printers ?? [], 'x')
  else if (root === 'prices') actions.putPrices(next.prices)
  else if (root === 'carbon') actions.putCarbon(next.carbon)
  else if (root === 'wholes' || root === 'clocks') actions.putReadings({ [root]: next[root] }, 'x')
  else if (root === 'variants') actions.putVariants(next.variants ?? [], 'x')
  else if (root === 'runs') actions.putRuns(next.runs ?? {}, 'x')
  else if (root === 'materials' && key !== 'id') {
    for (const material of next.materials.slice(0, 1)) actions.putMaterial(material)
  } else if (root === 'aircraft' && typeof at === 'string') {
    actions.putAircraft({ [at]: next.aircraft[at as keyof Frame['aircraft']] }, 'x')
  } else if (root === 'roles' && key === 'name') {
    for (const role of next.roles?.slice(0, 1) ?? []) actions.renameRole(role.id, role.name)
  } else if (root === 'parts') return putInPart(actions, next, path, value)
  else return false
  return true
}

function putInPart(actions: Session, next: Frame, path: Path, value: unknown): boolean {
  const [, at, key, inner] = path
  const part = next.parts[Number(at)]
  if (part === undefined) return false
  switch (key) {
    case 'zones': {
      const [zone] = part.zones
      if (zone === undefined || path.at(-1) !== 'infillPct') return false
      actions.setZonePct(part.id, zone.meshHash, zone.infillPct)
      return true
    }
    case 'weighIn': {
      if (inner !== 'pieces') return false
      const pieces = Number(value)
      actions.weighPart(part.id, { scaleG: 3, pieces, tareG: 1, stepG: 0.1, trusted: false })
      return true
    }
    case 'recipe':
      actions.updateParts([part.id], { recipe: part.recipe })
      return true
    case 'name':
    case 'note':
    case 'quantity':
    case 'spares':
      actions.updateParts([part.id], { [key]: value })
      return true
    default:
      return false
  }
}
