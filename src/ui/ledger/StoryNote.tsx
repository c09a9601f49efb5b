import { Button } from 'react-aria-components'
import { useActions, useAppState } from '../appContext.ts'

/** What the demo aircraft is for and what there is to find in it. */
export function StoryNote() {
  const { dismissStory } = useActions()
  const frameId = useAppState((state) => state.frame.id)
  const story = useAppState((state) => state.story)
  if (story?.frameId !== frameId) return null
  return (
    <aside className="story" aria-label="About this sample aircraft">
      <p>
        <strong>Invented sample aircraft.</strong> {withoutLabel(story.text)}
      </p>
      <Button className="quiet" onPress={dismissStory} aria-label="Dismiss the story of the sample">
        Dismiss
      </Button>
    </aside>
  )
}

/** The manifest labels itself too, for whoever reads it without this page. */
function withoutLabel(text: string): string {
  return text.replace(/^An invented sample\. /, '')
}
