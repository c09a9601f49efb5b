import { Button } from 'react-aria-components'
import type { PlateSummary } from '../../core/mesh/inspect.ts'
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

function plateWords({ groups, leftOut }: PlateSummary): string {
  const alike = groups.filter(({ count }) => count > 1)
  const single = groups.length - alike.length
  const words = alike.map(({ count, mirrored }) =>
    mirrored === 0 ? `${count} equal parts` : `${count} equal parts (${mirrored} mirrored)`,
  )
  if (single > 0) words.push(alike.length === 0 ? `${single} different parts` : `${single} other`)
  const scraps =
    leftOut === 0
      ? ''
      : ` ${leftOut} loose ${leftOut === 1 ? 'triangle belongs' : 'triangles belong'} to none of them and would be left out.`
  return `This file holds ${words.join(' and ')}.${scraps} They are priced together as one part until you choose otherwise.`
}
