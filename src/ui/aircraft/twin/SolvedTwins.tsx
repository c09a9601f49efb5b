import { Button } from 'react-aria-components'
import type { TwinReport } from '../../../core/aircraft/report/types.ts'

interface SolvedTwinsProps {
  readonly twin: TwinReport
  readonly isDone: boolean
  readonly wantsAll: boolean
  readonly onWantAll: () => void
}

/** By what the plates' stiffness is held equal, and the way to have all of it solved. */
export function SolvedTwins({ twin, isDone, wantsAll, onWantAll }: SolvedTwinsProps) {
  const flat = twin.parts.filter((one) => one.twin !== null)
  if (flat.length === 0) return null
  const solved = flat.filter(({ by }) => by === 'solid').map(({ name }) => name)
  const others = flat.length - solved.length
  return (
    <p className="hint" role="status">
      {solved.length === 0
        ? 'As stiff by strips of their layers. '
        : `As stiff by the solid model, held and pushed as on their own sheets: ${solved.join(', ')}. `}
      {solved.length > 0 && others > 0 ? 'The others by strips of their layers. ' : ''}
      {isDone ? null : 'Being solved. '}
      {wantsAll || others === 0 ? null : (
        <Button className="quiet screen-only" onPress={onWantAll}>
          Solve all parts
        </Button>
      )}
    </p>
  )
}
