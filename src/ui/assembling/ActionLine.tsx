import { PlainButton } from '../fields/PlainButton.tsx'
import { useJoinable } from '../useJoinable.ts'
import { clashWords } from './offerWords.ts'
import type { Assembling } from './useAssembling.ts'

interface ActionLineProps {
  readonly model: Assembling
  readonly sentence: string
  readonly onJoin: () => void
  readonly onSaid: (words: string) => void
}

/** What is offered, in a sentence, and what can be done with it. */
export function ActionLine({ model, sentence, onJoin, onSaid }: ActionLineProps) {
  const parts = useJoinable()
  const { way, ways, at, ghostClashes } = model
  if (way === null) return null
  const clash = clashWords(parts, ghostClashes, model)
  const step = (by: number) => {
    onSaid('')
    model.pick((at + by + ways.length) % ways.length)
  }
  return (
    <div className="action-line">
      <p>
        {sentence}
        {clash === '' ? null : <span className="amber">, {clash}</span>}
      </p>
      <div className="button-line">
        <PlainButton className="firm" onPress={onJoin}>
          Join
        </PlainButton>
        <PlainButton
          className="quiet"
          isDisabled={ways.length < 2}
          onPress={() => {
            step(1)
          }}
        >
          Next
        </PlainButton>
        <PlainButton
          className="quiet"
          onPress={() => {
            onSaid(model.turn() ? '' : 'Its holes do not let it be turned over.')
          }}
        >
          Turn over
        </PlainButton>
        <PlainButton className="quiet" onPress={model.drop}>
          Not here
        </PlainButton>
      </div>
      <p className="hint for-keys-wide">
        F6 loose pieces, Enter their offers · Left, Right the ways · T turns over · A and again ·
        Enter joins · Esc not here
      </p>
    </div>
  )
}
