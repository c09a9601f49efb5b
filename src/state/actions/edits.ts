import { TEXT_LIMITS } from '../../core/data/limits.ts'
import { ROLES } from '../../core/data/roles.ts'
import type { Aircraft } from '../../core/model/aircraft.ts'
import type { Material } from '../../core/model/figures.ts'
import { scaleEnd } from '../../core/joints/scaleEnd.ts'
import type { JointEnd } from '../../core/model/joints.ts'
import { unitToMm } from '../../core/model/units.ts'
import type { Frame, OwnRole, Part, RoleId } from '../../core/model/frame.ts'
import { patchPart } from './cleanPart.ts'
import type { PartPatch } from './types.ts'

/*
 * What the actions do to a frame, as functions of it. Each gives back the same frame when nothing changes,
 * and keeps every part it does not touch as the same object.
 */

function editParts(frame: Frame, ids: readonly string[], edit: (part: Part) => Part): Frame {
  const chosen = new Set(ids)
  const parts = frame.parts.map((part) => (chosen.has(part.id) ? edit(part) : part))
  return parts.every((part, index) => part === frame.parts[index]) ? frame : { ...frame, parts }
}

export function patchParts(frame: Frame, ids: readonly string[], patch: PartPatch): Frame {
  const next = editParts(frame, ids, (part) => patchPart(part, patch))
  return patch.unit === undefined ? next : scaleJoints(frame, next)
}

/** What is marked on a part in mm grows with it where its unit changes. */
function scaleJoints(before: Frame, next: Frame): Frame {
  const factors = new Map(
    before.parts.flatMap(({ id, unit }): (readonly [string, number])[] => {
      const now = next.parts.find((part) => part.id === id)?.unit ?? unit
      return now === unit ? [] : [[id, unitToMm(now) / unitToMm(unit)]]
    }),
  )
  const { joints } = next.aircraft
  const isMarked = joints.some(({ a, b }) => factors.has(a.partId) || factors.has(b.partId))
  if (!isMarked) return next
  const scaled = (end: JointEnd): JointEnd => scaleEnd(end, factors.get(end.partId) ?? 1)
  return {
    ...next,
    aircraft: {
      ...next.aircraft,
      joints: joints.map((joint) => ({ ...joint, a: scaled(joint.a), b: scaled(joint.b) })),
    },
  }
}

export function setRole(frame: Frame, ids: readonly string[], role: RoleId): Frame {
  const { recipe } = ROLES[role]
  return editParts(frame, ids, (part) => {
    if (part.role === role && part.recipe === recipe && part.ownRole === undefined) return part
    const { ownRole: _old, ...rest } = part
    return { ...rest, role, recipe }
  })
}

/** The frame then holds the role, too. */
export function setOwnRole(frame: Frame, ids: readonly string[], role: OwnRole): Frame {
  const { id: ownRole, duty, recipe } = role
  const next = editParts(frame, ids, (part) =>
    part.ownRole === ownRole && part.recipe === recipe
      ? part
      : { ...part, role: duty, ownRole, recipe },
  )
  const { roles = [] } = frame
  return roles.some(({ id }) => id === ownRole) ? next : { ...next, roles: [...roles, role] }
}

/** Each copy stands right behind its original. */
export function copyParts(frame: Frame, ids: readonly string[], newId: () => string): Frame {
  const chosen = new Set(ids)
  const names = new Set(frame.parts.map((part) => part.name))
  const parts = frame.parts.flatMap((part) => {
    if (!chosen.has(part.id)) return [part]
    const name = freeName(part.name, names)
    names.add(name)
    return [part, { ...part, id: newId(), name }]
  })
  return parts.length === frame.parts.length ? frame : { ...frame, parts }
}

export function dropParts(frame: Frame, ids: readonly string[]): Frame {
  const chosen = new Set(ids)
  const parts = frame.parts.filter((part) => !chosen.has(part.id))
  if (parts.length === frame.parts.length) return frame
  const { aircraft } = frame
  const joints = aircraft.joints.filter(
    ({ a, b }) => !chosen.has(a.partId) && !chosen.has(b.partId),
  )
  return {
    ...frame,
    parts,
    aircraft: joints.length === aircraft.joints.length ? aircraft : { ...aircraft, joints },
  }
}

/** What joints hold of an item that goes, or loses its body, goes with it. */
export function patchAircraft(aircraft: Aircraft, patch: Partial<Aircraft>): Aircraft {
  const next = { ...aircraft, ...patch }
  const bodied = ({ items }: Aircraft) =>
    new Set(items.flatMap(({ id, body }) => (body === undefined ? [] : [id])))
  const [before, now] = [bodied(aircraft), bodied(next)]
  const isGone = ({ partId }: JointEnd): boolean => before.has(partId) && !now.has(partId)
  const joints = next.joints.filter(({ a, b }) => !isGone(a) && !isGone(b))
  return joints.length === next.joints.length ? next : { ...next, joints }
}

export function putMaterial(frame: Frame, material: Material): Frame {
  const at = frame.materials.findIndex((each) => each.id === material.id)
  const materials = at === -1 ? [...frame.materials, material] : frame.materials.with(at, material)
  return { ...frame, materials }
}

/** Without a material of the user's. */
export function dropMaterial(frame: Frame, id: string): Frame {
  const materials = frame.materials.filter((each) => each.id !== id)
  return materials.length === frame.materials.length ? frame : { ...frame, materials }
}

/** With a material that the frame does not hold yet, where it is one of `others`. */
export function withMaterial(
  frame: Frame,
  id: string | undefined,
  others: readonly Material[],
): Frame {
  const found = others.find((each) => each.id === id)
  const isHere = frame.materials.some((each) => each.id === id)
  return found === undefined || isHere ? frame : putMaterial(frame, found)
}

/** `name`, or `name (2)` and so on when it is taken; never longer than a name may be. */
export function freeName(name: string, taken: ReadonlySet<string>): string {
  if (name.length <= TEXT_LIMITS.name && !taken.has(name)) return name
  const stem = name.replace(/ \(\d+\)$/, '')
  // Only a name that was too long may do without a number.
  for (let number = name.length > TEXT_LIMITS.name ? 1 : 2; ; number += 1) {
    const end = number === 1 ? '' : ` (${number})`
    const free = stem.slice(0, TEXT_LIMITS.name - end.length) + end
    if (!taken.has(free)) return free
  }
}
