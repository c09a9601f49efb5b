import { memo } from 'react'
import { Checkbox } from 'react-aria-components'
import { useActions, useReadState } from '../appContext.ts'

interface TickCellProps {
  readonly partId: string
  readonly name: string
  readonly isTicked: boolean
}

export const TickCell = memo(function TickCell({ partId, name, isTicked }: TickCellProps) {
  const { select } = useActions()
  const readState = useReadState()
  const tick = (ticked: boolean) => {
    const others = readState().selection.filter((id) => id !== partId)
    select(ticked ? [...others, partId] : others)
  }
  return (
    <td className="cell-tick">
      <Checkbox className="tick" aria-label={`Tick ${name}`} isSelected={isTicked} onChange={tick}>
        <span className="tick-box" />
      </Checkbox>
    </td>
  )
})
