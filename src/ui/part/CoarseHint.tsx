import { Button } from 'react-aria-components'
import { useActions } from '../appContext.ts'

/** The way to have all layers counted of a part that takes longer than it may by itself. */
export function CoarseHint({ partId }: { readonly partId: string }) {
  const { countFully } = useActions()
  return (
    <Button
      className="quiet"
      onPress={() => {
        countFully(partId)
      }}
    >
      Count fully
    </Button>
  )
}
