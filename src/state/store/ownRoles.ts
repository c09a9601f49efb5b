import type { OwnRole } from '../../core/model/frame.ts'
import type { AppState } from './types.ts'

/**
 * Every role of one's own that a part may take: the frame's, then those of the workshop that the
 * frame has not.
 */
export function ownRolesOf({
  frame: { roles = NONE },
  workshop,
}: Pick<AppState, 'frame' | 'workshop'>): readonly OwnRole[] {
  const here = new Set(roles.map(({ id }) => id))
  const others = workshop.roles.filter(({ id }) => !here.has(id))
  return others.length === 0 ? roles : [...roles, ...others]
}

const NONE: readonly OwnRole[] = []
