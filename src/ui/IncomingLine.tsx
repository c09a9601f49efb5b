import { formatPercent } from '../core/words/format.ts'
import { useActions, useAppState } from './appContext.ts'
import { PlainButton } from './fields/PlainButton.tsx'

/**
 * Up to this many files are named, each with a way to stop it; small files are opened first, so the
 * slow ones remain.
 */
const NAMED = 3

/** Files that are being opened, and those of a folder that hold no mesh by their name. */
export function IncomingLine({ leftAlone }: { readonly leftAlone: number }) {
  const incoming = useAppState((state) => state.incoming)
  const { cancelOpening } = useActions()
  const stop = (words: string, label: string, ids: readonly string[]) => (
    <PlainButton
      className="quiet"
      aria-label={label}
      onPress={() => {
        cancelOpening(ids)
      }}
    >
      {words}
    </PlainButton>
  )
  return (
    <div className="incoming">
      <p className="unseen" role="status">
        {incoming.length === 0 ? '' : `Opening ${filesWords(incoming.length)}.`}
      </p>
      {incoming.length > NAMED ? (
        <p>
          Opening {filesWords(incoming.length)}…{' '}
          {stop(
            'Cancel all',
            'Cancel opening all files',
            incoming.map(({ id }) => id),
          )}
        </p>
      ) : (
        incoming.map(({ id, name, fraction }) => (
          <p key={id}>
            Opening <span className="incoming-name">{name}</span>…{' '}
            {fraction === undefined ? '' : `${formatPercent(fraction)} `}
            {stop('Cancel', `Cancel opening ${name}`, [id])}
          </p>
        ))
      )}
      {leftAlone > 0 ? (
        <p role="status">
          {leftAlone === 1 ? 'One file' : `${leftAlone} files`} of the folder left alone: not STL,
          OBJ, 3MF or ZIP by name.
        </p>
      ) : null}
    </div>
  )
}

function filesWords(count: number): string {
  return count === 1 ? 'one file' : `${count} files`
}
