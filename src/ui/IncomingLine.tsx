import { useAppState } from './appContext.ts'

/** Files that are being opened, and those of a folder that hold no mesh by their name. */
export function IncomingLine({ leftAlone }: { readonly leftAlone: number }) {
  const incoming = useAppState((state) => state.incoming)
  const words: string[] = []
  if (incoming.length > 0) {
    const [first = ''] = incoming
    words.push(incoming.length === 1 ? `Opening ${first}…` : `Opening ${incoming.length} files…`)
  }
  if (leftAlone > 0) {
    const files = leftAlone === 1 ? 'One file' : `${leftAlone} files`
    words.push(`${files} of the folder left alone: not STL, OBJ, 3MF or ZIP by name.`)
  }
  return (
    <p className="incoming" role="status">
      {words.join(' ')}
    </p>
  )
}
