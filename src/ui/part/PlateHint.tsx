import { Button } from 'react-aria-components'
import type { PlateSummary } from '../../core/mesh/inspect.ts'
import { plateWords } from '../../core/mesh/plateWords.ts'
import { useActions } from '../appContext.ts'

/** Offers rows of their own for the parts of a plate; doing nothing keeps them one part. */
export function PlateHint({
  partId,
  plate,
}: {
  readonly partId: string
  readonly plate: PlateSummary
}) {
  const { splitPlate } = useActions()
  return (
    <div className="offer">
      <p className="hint">{plateWords(plate)}</p>
      <Button className="quiet" onPress={() => void splitPlate(partId)}>
        {plate.groups.length === 1 ? 'Make one row with a count' : 'Make rows of them'}
      </Button>
    </div>
  )
}
