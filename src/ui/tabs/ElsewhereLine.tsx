import type { Elsewhere } from '../../state/store/types.ts'
import { useActions, useAppState } from '../appContext.ts'
import { PlainButton } from '../fields/PlainButton.tsx'

const WORDS: Readonly<Record<Elsewhere['why'], string>> = {
  open: 'is open in another tab. Here you can look at it, but not change it.',
  taken: 'was taken over by another tab. Here you can still look at it, but not change it.',
  changed:
    'was changed in another tab. What you see here is older and is not kept; nothing there was written over.',
}

/** Says that another tab has the frame, and offers the two ways on. */
export function ElsewhereLine() {
  const why = useAppState(({ elsewhere, frame }) =>
    elsewhere?.projectId === frame.id ? elsewhere.why : null,
  )
  const name = useAppState((state) => state.frame.name)
  const { takeOver, openCopy } = useActions()
  if (why === null) return null
  return (
    <section className="elsewhere" role="alert" aria-label="Open in another tab">
      <p>
        <strong>{name}</strong> {WORDS[why]}
      </p>
      <div className="button-line">
        <PlainButton className="outlined" onPress={() => void takeOver()}>
          {why === 'changed' ? 'Show what is kept' : 'Take it over'}
        </PlainButton>
        <PlainButton className="quiet" onPress={openCopy}>
          {why === 'changed' ? 'Keep this as a copy' : 'Open a copy'}
        </PlainButton>
      </div>
    </section>
  )
}
