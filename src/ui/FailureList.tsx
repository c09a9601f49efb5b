import type { FileFailure } from '../state/store/types.ts'
import { useActions, useAppState } from './appContext.ts'
import { PlainButton } from './fields/PlainButton.tsx'
import { toldWords } from '../core/words/toldWords.ts'

/** Files that could not become a part: which, what is wrong, what to do. */
export function FailureList() {
  const failures = useAppState((state) => state.failures)
  const { dismissFailure } = useActions()
  if (failures.length === 0) return null
  return (
    <section className="failures" aria-label="Files left out">
      <header>
        <div role="alert">
          <h2>{headWords(failures)}</h2>
        </div>
        {failures.length > 1 ? (
          <PlainButton
            className="quiet"
            onPress={() => {
              for (const { id } of failures) dismissFailure(id)
            }}
          >
            Dismiss all
          </PlainButton>
        ) : null}
      </header>
      <ul>
        {failures.map(({ id, fileName, problem }) => (
          <li key={id}>
            <div>
              <strong>{fileName}</strong> {toldWords(withoutName(problem.message, fileName))}{' '}
              <span className="advice">{toldWords(problem.advice)}</span>
            </div>
            <PlainButton
              className="quiet"
              aria-label={`Dismiss ${fileName}`}
              onPress={() => {
                dismissFailure(id)
              }}
            >
              Dismiss
            </PlainButton>
          </li>
        ))}
      </ul>
    </section>
  )
}

function headWords(failures: readonly FileFailure[]): string {
  const { length } = failures
  if (failures.some(({ partial }) => partial === true)) {
    return length === 1 ? 'One thing could not be read' : `${length} things could not be read`
  }
  return length === 1 ? 'One file was left out' : `${length} files were left out`
}

/** Messages that go to a terminal start with the file's name; here it already stands in front. */
function withoutName(message: string, fileName: string): string {
  const start = `${fileName}: `
  return message.startsWith(start) ? message.slice(start.length) : message
}
