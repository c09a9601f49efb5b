import { ROLES } from '../../core/data/roles.ts'
import { ownRolesOf } from '../../state/store/ownRoles.ts'
import { useShallow } from 'zustand/react/shallow'
import { useAppState } from '../appContext.ts'
import type { Option } from '../fields/Choice.tsx'

/** Every role as a choice: those that come with the page, then one's own. */
export function useRoleOptions(): readonly Option<string>[] {
  const own = useAppState(useShallow(ownRolesOf))
  return [
    ...Object.values(ROLES).map(({ id, name }) => ({ id, name })),
    ...own.map(({ id, name }) => ({ id, name, detail: 'yours' })),
  ]
}
