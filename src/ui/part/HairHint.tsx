import { Button } from 'react-aria-components'
import { useActions } from '../appContext.ts'

interface HairHintProps {
  readonly partId: string
  readonly isKept: boolean
}

/** The way to keep what is thinner than a line, and back. */
export function HairHint({ partId, isKept }: HairHintProps) {
  const { updateParts } = useActions()
  return (
    <Button
      className="quiet"
      onPress={() => {
        updateParts([partId], { keepsHairs: !isKept })
      }}
    >
      {isKept ? 'Leave the hair out' : 'Keep the hair'}
    </Button>
  )
}
