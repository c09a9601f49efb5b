import { useState } from 'react'
import { Button } from 'react-aria-components'
import { useActions, useAppState } from '../appContext.ts'

/**
 * What the demo aircraft is for and what there is to find in it: a note of the sheet, unfolded when
 * asked for.
 */
export function StoryNote() {
  const { dismissStory } = useActions()
  const frameId = useAppState((state) => state.frame.id)
  const story = useAppState((state) => state.story)
  const [isWhole, setWhole] = useState(false)
  if (story?.frameId !== frameId) return null
  const text = withoutLabel(story.text)
  return (
    <aside className="story" aria-label="About this sample aircraft">
      <p>
        <strong>Invented sample aircraft.</strong> {isWhole ? text : firstSentence(text)}
      </p>
      <div className="button-line">
        <Button
          className="quiet"
          aria-expanded={isWhole}
          onPress={() => {
            setWhole(!isWhole)
          }}
        >
          {isWhole ? 'Read less' : 'Read all'}
        </Button>
        <Button
          className="quiet"
          onPress={({ target }) => {
            // The note goes and would take the focus with it.
            const heading = target.closest('.drawn-sheet')?.querySelector('h2')
            dismissStory()
            heading?.focus({ preventScroll: true })
          }}
          aria-label="Dismiss the story of the sample"
        >
          Dismiss
        </Button>
      </div>
    </aside>
  )
}

/** The manifest labels itself too, for whoever reads it without this page. */
function withoutLabel(text: string): string {
  return text.replace(/^An invented sample\. /, '')
}

function firstSentence(text: string): string {
  return /^.*?[.;](?=\s)/.exec(text)?.[0].replace(/;$/, '.') ?? text
}
