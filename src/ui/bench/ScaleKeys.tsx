import { formatTyped } from '../../core/words/format.ts'

/** The largest reading that is taken has so many, with two decimals. */
const MOST_KEYS = 10

interface ScaleKeysProps {
  readonly onKey: (next: (text: string) => string) => void
}

/** Digits for the thumb; the keys of a keyboard do the same. */
export function ScaleKeys({ onKey }: ScaleKeysProps) {
  const mark = formatTyped(0.5, 1).slice(1, 2)
  const keys = ['1', '2', '3', '4', '5', '6', '7', '8', '9', mark, '0']
  return (
    <div className="scale-keys" role="group" aria-label="Digits">
      {keys.map((key) => (
        <button
          key={key}
          type="button"
          onClick={() => {
            onKey((text) =>
              key === mark && text.includes(mark) ? text : (text + key).slice(0, MOST_KEYS),
            )
          }}
        >
          {key}
        </button>
      ))}
      <button
        type="button"
        aria-label="Delete the last digit"
        onClick={() => {
          onKey((text) => text.slice(0, -1))
        }}
      >
        del
      </button>
    </div>
  )
}
