import { Button } from 'react-aria-components'
import type { Range } from '../core/model/figures.ts'
import { useActions } from './appContext.ts'
import { GramRuler } from './frame/GramRuler.tsx'
import { PickButton } from './intake/PickButton.tsx'
import type { Intake } from './intake/readDrop.ts'

/** The balance before anything lies on it. */
const AT_REST: Range = { low: 0, mid: 0, high: 0 }

/** The first visit: what this is for, and every way in. */
export function EmptyState({ onIntake }: { readonly onIntake: (intake: Intake) => void }) {
  const { loadDemo } = useActions()
  return (
    <section className="empty">
      <GramRuler massG={AT_REST} carbonG={null} />
      <h1>Weigh a printed airframe before you print it.</h1>
      <p className="lead">
        From the triangles of each part, layer by layer: its grams, its cost and its hours, each
        with a range. Summed over the frame, spares included, and set against the same frame in
        carbon.
      </p>
      <div className="ways-in">
        <div className="drop-place">
          <p className="drop-words">Drop meshes anywhere on this window</p>
          <p className="hint">
            STL, OBJ or 3MF, many at once, a folder or a ZIP of them, or a saved frame. Pasting
            files works too.
          </p>
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
          <p>No mesh at hand? Try an invented aircraft with the troubles real files have.</p>
          <div className="button-line">
            <Button className="outlined" onPress={() => void loadDemo('sandpiper')}>
              Load Sandpiper, a tricopter
            </Button>
            <Button className="quiet" onPress={() => void loadDemo('tern')}>
              or Tern, a glider
            </Button>
          </div>
        </div>
      </div>
      <p className="hint empty-foot">Nothing leaves this device: no server, no account.</p>
    </section>
  )
}
