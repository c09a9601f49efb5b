import { ROLES } from '../../core/data/roles.ts'
import type { RoleId } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'

const ROLE_IDS = Object.keys(ROLES) as RoleId[]

interface RoleFieldProps {
  readonly partId: string
  readonly role: RoleId | null
}

/** A whole recipe at once, by what the part has to do. */
export function RoleField({ partId, role }: RoleFieldProps) {
  const { applyRole } = useActions()
  return (
    <Choice
      label="Recipe for"
      value={role}
      placeholder="set by hand"
      options={ROLE_IDS.map((id) => ({ id, name: ROLES[id].name }))}
      {...(role === null ? {} : { hint: ROLES[role].reason })}
      onChange={(next) => {
        applyRole([partId], next)
      }}
    />
  )
}
