import { lazy, memo, Suspense } from 'react'
import { ROLES } from '../../core/data/roles.ts'
import type { Part } from '../../core/model/frame.ts'
import { ownRolesOf } from '../../state/store/ownRoles.ts'
import type { AppState } from '../../state/store/types.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { useRoleOptions } from '../workshop/useRoles.ts'

const RoleTools = lazy(async () => {
  const { RoleTools: Loaded } = await import('../workshop/RoleTools.tsx')
  return { default: Loaded }
})

/** A whole recipe at once, by what the part has to do. */
export const RoleField = memo(function RoleField({ partId }: { readonly partId: string }) {
  const { applyRole } = useActions()
  const options = useRoleOptions()
  const role = useAppState((state) => partOf(state, partId)?.role ?? null)
  const ownRole = useAppState((state) => partOf(state, partId)?.ownRole)
  const own = useAppState((state) => ownRolesOf(state).find(({ id }) => id === ownRole)) ?? null
  return (
    <div className="role-field">
      <Choice
        label="Recipe for"
        value={own?.id ?? role}
        placeholder="set by hand"
        options={options}
        {...(role === null || own !== null ? {} : { hint: ROLES[role].reason })}
        onChange={(next) => {
          applyRole([partId], next)
        }}
      />
      <Suspense>
        <RoleTools key={partId} partId={partId} role={own} />
      </Suspense>
    </div>
  )
})

function partOf({ frame }: AppState, partId: string): Part | undefined {
  return frame.parts.find(({ id }) => id === partId)
}
