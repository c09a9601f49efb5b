import { lazy, Suspense } from 'react'
import { ROLES } from '../../core/data/roles.ts'
import { ownRolesOf } from '../../state/store/ownRoles.ts'
import { useActions, useAppState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { useRoleOptions } from '../workshop/useRoles.ts'

const RoleTools = lazy(async () => {
  const { RoleTools: Loaded } = await import('../workshop/RoleTools.tsx')
  return { default: Loaded }
})

/** A whole recipe at once, by what the part has to do. */
export function RoleField({ partId }: { readonly partId: string }) {
  const { applyRole } = useActions()
  const options = useRoleOptions()
  const part = useAppState((state) => state.frame.parts.find(({ id }) => id === partId))
  const { role = null, ownRole } = part ?? {}
  const own = useAppState((state) => ownRolesOf(state).find(({ id }) => id === ownRole)) ?? null
  return (
    <>
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
    </>
  )
}
