import { ROLES } from '../core/data/roles.ts'
import type { Frame, Part } from '../core/model/frame.ts'

/**
 * The role that a part's recipe came from, by its name: one of the frame's own, else a built-in
 * one.
 */
export function roleNameOf({ role, ownRole }: Part, { roles = [] }: Frame): string | null {
  const own = roles.find(({ id }) => id === ownRole)
  if (own !== undefined) return own.name
  return role === null ? null : ROLES[role].name
}

/**
 * Parts whose role of the builder's own the frame does not hold; their recipes are in them all the
 * same.
 */
export function roleNotes({ parts, roles = [] }: Frame): readonly string[] {
  const known = new Set(roles.map(({ id }) => id))
  return parts.flatMap(({ name, ownRole }) =>
    ownRole === undefined || known.has(ownRole)
      ? []
      : [
          `The role that “${name}” was given is not in this file: its own recipe, which came from it, holds.`,
        ],
  )
}
