import { memo } from 'react'
import { Checkbox } from 'react-aria-components'
import { useActions, useReadState } from '../appContext.ts'

interface TickBoxProps {
  readonly partId: string
  readonly name: string
  readonly isTicked: boolean
}

/** Stands where the item's number is, while the row is pointed at, has the focus or is ticked. */
export const TickBox = memo(function TickBox({ partId, name, isTicked }: TickBoxProps) {
  const { select } = useActions()
  const readState = useReadState()
  const tick = (ticked: boolean) => {
    const others = readState().selection.filter((id) => id !== partId)
    select(ticked ? [...others, partId] : others)
  }
  return (
    <Checkbox className="tick" aria-label={`Tick ${name}`} isSelected={isTicked} onChange={tick}>
      <span className="tick-box" />
    </Checkbox>
  )
})
