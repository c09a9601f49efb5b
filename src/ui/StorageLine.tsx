import { Button } from 'react-aria-components'
import { useAppState } from './appContext.ts'
import { useSaveFile } from './frame/download.ts'

/** Says where the work is kept; browsers may refuse to keep anything. */
export function StorageLine() {
  const storage = useAppState((state) => state.storage)
  const isElsewhere = useAppState(
    ({ elsewhere, frame }) => elsewhere !== null && elsewhere.projectId === frame.id,
  )
  if (isElsewhere) return <span className="storage">Read only in this tab</span>
  switch (storage.kind) {
    case 'saved':
      return <span className="storage">Saved on this device</span>
    case 'saving':
      return <span className="storage">Saving…</span>
    case 'memory':
      return <NotKept reason={storage.reason} />
  }
}

function NotKept({ reason }: { readonly reason: string }) {
  const { save, trouble } = useSaveFile()
  return (
    <span className="storage storage-memory" role="status">
      Not kept after this visit: {trouble ?? reason}{' '}
      <Button className="quiet" onPress={save}>
        Save it as a file now
      </Button>
    </span>
  )
}
