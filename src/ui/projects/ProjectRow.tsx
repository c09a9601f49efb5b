import { useState } from 'react'
import { Button, Input, TextField } from 'react-aria-components'
import { TEXT_LIMITS } from '../../core/data/limits.ts'
import type { ProjectSummary } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'
import { TooLong } from '../fields/TooLong.tsx'
import { tooLongWords } from '../fields/tooLongWords.ts'
import { showGrams } from '../show.ts'
import { massUnit } from '../../core/words/shownUnits.ts'

interface ProjectRowProps {
  readonly project: ProjectSummary
  readonly isPresent: boolean
  readonly onOpened: () => void
}

const time = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' })

export function ProjectRow({ project, isPresent, onOpened }: ProjectRowProps) {
  const { openStored, duplicateProject, deleteProject, bringBackProject } = useActions()
  const [isRenaming, setIsRenaming] = useState(false)
  const { id, name, partCount, massG, changedAt, deletedAt } = project
  const open = () => {
    void openStored(id).then(onOpened)
  }
  const button = (words: string, act: () => void) => (
    <Button className="quiet" aria-label={`${words} ${name}`} onPress={act}>
      {words}
    </Button>
  )
  return (
    <tr aria-current={isPresent ? 'true' : undefined} data-deleted={deletedAt !== null}>
      <th scope="row">
        {isRenaming ? (
          <RenameField
            project={project}
            onDone={() => {
              setIsRenaming(false)
            }}
          />
        ) : deletedAt === null ? (
          <Button className="quiet project-name" aria-label={`Open ${name}`} onPress={open}>
            {name}
          </Button>
        ) : (
          <span className="project-name">{name}</span>
        )}
      </th>
      <td className="figures">
        {partCount}
        <span className="cell-unit"> {partCount === 1 ? 'part' : 'parts'}</span>
      </td>
      <td className="figures">
        {massG === null ? '–' : showGrams({ low: massG, mid: massG, high: massG }).mid}
        <span className="cell-unit"> {massUnit()}</span>
      </td>
      <td>{time.format(changedAt)}</td>
      <td>
        {deletedAt === null ? (
          <div className="button-line">
            {button('Rename', () => {
              setIsRenaming(true)
            })}
            {button('Duplicate', () => void duplicateProject(id))}
            {button('Delete', () => void deleteProject(id))}
          </div>
        ) : (
          <div className="button-line">
            <span className="hint">Deleted; kept for a day.</span>
            {button('Bring back', () => void bringBackProject(id))}
          </div>
        )}
      </td>
    </tr>
  )
}

interface RenameFieldProps {
  readonly project: ProjectSummary
  readonly onDone: () => void
}

function RenameField({ project, onDone }: RenameFieldProps) {
  const { renameProject } = useActions()
  const [draft, setDraft] = useState(project.name)
  const tooLong = tooLongWords(draft, TEXT_LIMITS.name)
  const keep = () => {
    if (tooLong !== null) return
    void renameProject(project.id, draft)
    onDone()
  }
  return (
    <TextField
      className="project-rename"
      aria-label={`New name of ${project.name}`}
      value={draft}
      isInvalid={tooLong !== null}
      onChange={setDraft}
      onBlur={keep}
      autoFocus
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
        else if (event.key === 'Escape') onDone()
        else event.continuePropagation()
      }}
    >
      <Input />
      <TooLong words={tooLong} />
    </TextField>
  )
}
