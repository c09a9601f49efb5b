import { useAppState } from './appContext.ts'

/** Says where the work is kept; browsers may refuse to keep anything. */
export function StorageLine() {
  const storage = useAppState((state) => state.storage)
  switch (storage.kind) {
    case 'saved':
      return <span className="storage">Saved on this device</span>
    case 'saving':
      return <span className="storage">Saving…</span>
    case 'memory':
      return (
        <span className="storage storage-memory" role="status">
          Not kept after this visit: {storage.reason} Save a project file instead.
        </span>
      )
  }
}
