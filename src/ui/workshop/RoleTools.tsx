import { useState } from 'react'
import { Button, Form, Input, Label, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import type { OwnRole } from '../../core/model/frame.ts'
import { useActions } from '../appContext.ts'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'

interface RoleToolsProps {
  readonly partId: string
  /** The role of one's own that the part has; null for none. */
  readonly role: OwnRole | null
}

/** Gives the part's recipe a name of one's own, renames that role, or deletes it. */
export function RoleTools({ partId, role }: RoleToolsProps) {
  const { keepRole, renameRole, dropRole } = useActions()
  const [naming, setNaming] = useState<'new' | 'old' | null>(null)
  const done = () => {
    setNaming(null)
  }
  if (naming !== null) {
    return (
      <RoleName
        was={naming === 'old' && role !== null ? role.name : ''}
        onLeave={done}
        onKeep={(name) => {
          if (naming === 'old' && role !== null) renameRole(role.id, name)
          else keepRole(partId, name)
          done()
        }}
      />
    )
  }
  return (
    <div className="button-line role-tools">
      {role === null ? (
        <Button
          className="quiet"
          onPress={() => {
            setNaming('new')
          }}
        >
          Keep as a role
        </Button>
      ) : (
        <>
          <Button
            className="quiet"
            onPress={() => {
              setNaming('old')
            }}
          >
            Rename this role
          </Button>
          <Button
            className="quiet"
            onPress={() => {
              dropRole(role.id)
            }}
          >
            Delete this role
          </Button>
        </>
      )}
    </div>
  )
}

interface RoleNameProps {
  readonly was: string
  readonly onKeep: (name: string) => void
  readonly onLeave: () => void
}

function RoleName({ was, onKeep, onLeave }: RoleNameProps) {
  const [name, setName] = useState(was)
  const tooLong = tooLongWords(name, TEXT_LIMITS.name)
  const isKept = name.trim() !== '' && tooLong === null
  return (
    <Form
      className="role-tools"
      aria-label="Name of the role"
      onSubmit={(event) => {
        event.preventDefault()
        if (isKept) onKeep(name)
      }}
    >
      <TextField
        className="field text-field"
        value={name}
        isInvalid={tooLong !== null}
        onChange={setName}
        // Naming is what was asked for.
        // eslint-disable-next-line jsx-a11y/no-autofocus
        autoFocus
        onKeyDown={(event) => {
          if (event.key === 'Escape') onLeave()
        }}
      >
        <Label>Name of the role</Label>
        <Input />
        <TooLong words={tooLong} />
      </TextField>
      <div className="button-line">
        <Button className="quiet" onPress={onLeave}>
          Leave it
        </Button>
        <Button className="outlined" type="submit" isDisabled={!isKept}>
          Keep this name
        </Button>
      </div>
    </Form>
  )
}
