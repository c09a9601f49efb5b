import type { StoreApi } from 'zustand/vanilla'
import { ROLES } from '../../core/data/roles.ts'
import type { Frame, OwnRole } from '../../core/model/frame.ts'
import { partWords } from '../store/labels.ts'
import { ownRolesOf } from '../store/ownRoles.ts'
import { sameValue } from '../store/sameValue.ts'
import type { Actions } from './types.ts'
import type { AppState } from '../store/types.ts'
import { setOwnRole, setRole } from './edits.ts'
import type { History } from './history.ts'
import type { WorkshopKeeper } from './workshop.ts'

type RoleActions = Pick<Actions, 'applyRole' | 'keepRole' | 'renameRole' | 'dropRole'>

/** Recipes under a name: those that come with the page, and the builder's own. */
export function createRoleActions(
  store: StoreApi<AppState>,
  history: History,
  newId: () => string,
  workshop: Pick<WorkshopKeeper, 'change'>,
): RoleActions {
  const frame = () => store.getState().frame

  function commit(label: string, next: Frame): void {
    if (next !== frame()) history.commit(label, next)
  }

  /** The name as it will be kept; null where it cannot be, which is then said. */
  function freshName(wanted: string, exceptId: string | null): string | null {
    const name = wanted.trim()
    if (name === '') return null
    const others = [
      ...Object.values(ROLES),
      ...ownRolesOf(store.getState()).filter(({ id }) => id !== exceptId),
    ]
    if (!others.some((role) => role.name.toLowerCase() === name.toLowerCase())) return name
    const text = `There is a role called “${name}” already. Choose another name.`
    store.setState({ notice: { text, canUndo: false } })
    return null
  }

  /** Also where the frame's role is no longer the workshop's, or the frame has it not. */
  function changeMine(roleId: string, edit: (role: OwnRole) => OwnRole | null): void {
    workshop.change((old) => {
      const roles = old.roles.flatMap((each) => (each.id === roleId ? (edit(each) ?? []) : [each]))
      return sameValue(roles, old.roles) ? old : { ...old, roles }
    })
  }

  return {
    applyRole(ids, roleId) {
      const common = Object.values(ROLES).find(({ id }) => id === roleId)
      const own = ownRolesOf(store.getState()).find(({ id }) => id === roleId)
      const role = common ?? own
      if (role === undefined) return
      const label = `make ${partWords(frame(), ids)} “${role.name}”`
      if (common !== undefined) commit(label, setRole(frame(), ids, common.id))
      else if (own !== undefined) commit(label, setOwnRole(frame(), ids, own))
    },
    keepRole(partId, wanted) {
      const part = frame().parts.find(({ id }) => id === partId)
      const name = freshName(wanted, null)
      if (part === undefined || name === null) return
      const role = { id: `own-${newId()}`, name, duty: part.role, recipe: part.recipe }
      commit(`keep the role “${name}”`, setOwnRole(frame(), [partId], role))
    },
    renameRole(roleId, wanted) {
      const role = ownRolesOf(store.getState()).find(({ id }) => id === roleId)
      const name = freshName(wanted, roleId)
      if (role === undefined || name === null || name === role.name) return
      const { roles = [] } = frame()
      const next = [...roles.filter(({ id }) => id !== roleId), { ...role, name }]
      const before = frame()
      commit(`rename the role “${role.name}”`, { ...before, roles: next })
      // Refused, with its reason told: yours keeps its name too.
      if (frame() === before) return
      changeMine(roleId, (each) => (each.name === name ? each : { ...each, name }))
    },
    dropRole(roleId) {
      const role = ownRolesOf(store.getState()).find(({ id }) => id === roleId)
      if (role === undefined) return
      const before = frame()
      const { roles = [], parts } = before
      commit(`delete the role “${role.name}”`, {
        ...before,
        roles: roles.filter(({ id }) => id !== roleId),
        parts: parts.map((part) => {
          if (part.ownRole !== roleId) return part
          const { ownRole: _gone, ...rest } = part
          return rest
        }),
      })
      // Refused, with its reason told: yours stays too.
      if (frame() === before) return
      changeMine(roleId, () => null)
    },
  }
}
