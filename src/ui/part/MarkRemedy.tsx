import type { Part } from '../../core/model/frame.ts'
import { goToRemedy } from './goToRemedy.ts'
import type { PartMark } from './partMarks.ts'
import { usePartEdit } from './usePartEdit.ts'

interface MarkRemedyProps {
  readonly of: PartMark
  readonly part: Part
}

/** What can be done about a mark: done at once, or where it stands in full. */
export function MarkRemedy({ of: { kind, sign }, part: { id, recipe } }: MarkRemedyProps) {
  const { edit } = usePartEdit(id)
  if (kind === 'over')
    return (
      <button
        type="button"
        className="quiet remedy"
        onClick={() => {
          edit({ recipe: { supports: !recipe.supports } })
        }}
      >
        {recipe.supports ? 'Turn supports off' : 'Turn supports on'}
      </button>
    )
  return kind === 'finding' ? (
    <button
      type="button"
      className="quiet remedy"
      onClick={() => {
        goToRemedy(sign)
      }}
    >
      What to do
    </button>
  ) : null
}
