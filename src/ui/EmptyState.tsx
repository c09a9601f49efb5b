import { Button } from 'react-aria-components'
import { useActions } from './app-context.ts'
import { PickButton } from './intake/PickButton.tsx'
import type { Intake } from './intake/read-drop.ts'

/** The first visit: what this is for, and every way in. */
export function EmptyState({ onIntake }: { readonly onIntake: (intake: Intake) => void }) {
  const { loadDemo } = useActions()
  return (
    <section className="empty">
      <h1>
        Weigh a printed airframe
        <br />
        before you print it.
      </h1>
      <p className="lead">
        Drop the meshes of a frame anywhere on this window. Each part is counted layer by layer:
        grams, cost and hours, with their ranges, summed over the frame and set against carbon.
      </p>
      <div className="drop-place">
        <p>STL, OBJ, 3MF, a folder or a ZIP of them, or a saved frame. Paste works too.</p>
        <div className="button-line">
          <PickButton className="firm" onPick={onIntake}>
            Choose files
          </PickButton>
          <PickButton className="quiet" folder onPick={onIntake}>
            Choose a folder
          </PickButton>
        </div>
      </div>
      <div className="demo-place">
        <p>No mesh at hand? Look at a made-up aircraft, with the troubles real files have.</p>
        <div className="button-line">
          <Button className="firm" onPress={() => void loadDemo('sandpiper')}>
            Load Sandpiper, a tricopter
          </Button>
          <Button className="quiet" onPress={() => void loadDemo('tern')}>
            or Tern, a glider
          </Button>
        </div>
      </div>
      <p className="quiet-text">Nothing leaves this device: no server, no account.</p>
    </section>
  )
}
