import { Button } from 'react-aria-components'
import { useActions } from '../appContext.ts'

/** Offers to price the part without the loose scraps that its findings name. */
export function SpeckHint({ partId }: { readonly partId: string }) {
  const { dropSpecks } = useActions()
  return (
    <Button className="quiet" onPress={() => void dropSpecks(partId)}>
      Drop the loose scraps
    </Button>
  )
}
