import { useAppState } from '../appContext.ts'
import { useSaveFile } from './download.ts'
import { PlainButton } from '../fields/PlainButton.tsx'

/**
 * Says where the work is kept; browsers may refuse to keep anything, which is said before there is
 * any work.
 */
export function StorageLine({ hasParts }: { readonly hasParts: boolean }) {
  const storage = useAppState((state) => state.storage)
  const isElsewhere = useAppState(
    ({ elsewhere, frame }) => elsewhere !== null && elsewhere.projectId === frame.id,
  )
  if (storage.kind !== 'memory' && !hasParts) return null
  if (isElsewhere) return <span className="storage">Read only in this tab</span>
  switch (storage.kind) {
    case 'saved':
      return <span className="storage">Saved on this device</span>
    case 'saving':
      return <span className="storage">Saving…</span>
    case 'memory':
      return hasParts ? (
        <NotKept reason={storage.reason} />
      ) : (
        <span className="storage storage-memory" role="status">
          Nothing can be kept, nor what was kept be shown, in this visit: {storage.reason}
        </span>
      )
  }
}

function NotKept({ reason }: { readonly reason: string }) {
  const { save, trouble } = useSaveFile()
  return (
    <span className="storage storage-memory" role="status">
      Not kept after this visit: {trouble ?? reason}{' '}
      <PlainButton className="quiet" onPress={save}>
        Save it as a file now
      </PlainButton>
    </span>
  )
}
