import type { Range } from '../core/model/figures.ts'
import { useActions } from './appContext.ts'
import { formatFixed } from '../core/words/format.ts'
import { massUnit } from '../core/words/shownUnits.ts'
import { showGrams, showMoney } from './show.ts'
import { PlainButton } from './fields/PlainButton.tsx'
import { GramRuler } from './head/GramRuler.tsx'
import { PickButton } from './intake/PickButton.tsx'
import type { Intake } from './intake/readDrop.ts'

/** The balance before anything lies on it. */
const AT_REST: Range = { low: 0, mid: 0, high: 0 }

/** The first visit: what this is for, every way in, and in small what comes out. */
export function EmptyState({ onIntake }: { readonly onIntake: (intake: Intake) => void }) {
  const { loadDemo } = useActions()
  return (
    <>
      <div className="empty-ruler">
        <span className="empty-mass" aria-hidden="true">
          {formatFixed(0, 1)} <small>{massUnit()}</small>
        </span>
        <GramRuler massG={AT_REST} carbonG={null} />
      </div>
      <section className="drawn-sheet empty">
        <div className="empty-words">
          <h1 tabIndex={-1}>Weigh a printed airframe before you print it.</h1>
          <p className="lead">
            From the triangles of each part, layer by layer: its grams, its cost and its hours, each
            with a range. Summed over the frame, spares included, and set against the same frame in
            carbon.
          </p>
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
          <p className="hint">
            No mesh at hand? Try an invented aircraft with the troubles real files have.
          </p>
          <div className="button-line">
            <PlainButton className="quiet" onPress={() => void loadDemo('sandpiper')}>
              Load Sandpiper, a tricopter
            </PlainButton>
            <PlainButton className="quiet" onPress={() => void loadDemo('tern')}>
              or Tern, a glider
            </PlainButton>
          </div>
        </div>
        <ExamplePicture />
        <footer className="title-block" aria-label="Title block">
          <div className="block-cell block-title">
            <span className="block-head">Title</span>
            <strong>Your frame</strong>
          </div>
          <div className="block-cell">
            <span className="block-head">Sheets</span>
            Frame, Part, Choose, Carbon, Aircraft, Bench
          </div>
          <div className="block-cell">
            <span className="block-head">Where it is kept</span>
            Nothing leaves this device: no server, no account.
          </div>
        </footer>
      </section>
    </>
  )
}

const EXAMPLE_G: Range = { low: 21.4, mid: 22.1, high: 22.9 }
const EXAMPLE_COST: Range = { low: 0.52, mid: 0.66, high: 0.8 }

/**
 * One arm with its three answers, as every part gets them; a drawing of ours, its figures stand for
 * any.
 */
function ExamplePicture() {
  const mass = showGrams(EXAMPLE_G)
  const cost = showMoney(EXAMPLE_COST, 'EUR')
  return (
    <svg
      className="example"
      viewBox="0 0 520 330"
      role="img"
      aria-label={
        `For example an arm: ${mass.mid} ${massUnit()}, ${mass.range}; ${cost.mid} in money; ` +
        '1 hour 26 minutes of printing'
      }
    >
      <g className="example-part">
        <path className="tone tone-1" d="M72 148 128 122 402 188 346 216Z" />
        <path className="tone tone-2" d="M72 148 346 216V240L72 172Z" />
        <path className="tone tone-3" d="M346 216 402 188V212L346 240Z" />
        <path d="M72 148 128 122 402 188V212L346 240 72 172ZM72 148 346 216V240M346 216 402 188" />
        <path
          className="example-edge"
          d={
            'M168 149c8-4 20-4 30-2l62 15c8 2 8 6 1 9s-18 3-27 1l-64-16c-7-2-8-5-2-7Z' +
            'M104 140a10 4.5 0 1 0 .1 0M352 200a10 4.5 0 1 0 .1 0'
          }
        />
      </g>
      <g className="leader">
        <path d="M216 158 196 74H176M300 222 320 286H340M388 195 410 120H428" />
        <circle cx="216" cy="158" r="2.5" />
        <circle cx="300" cy="222" r="2.5" />
        <circle cx="388" cy="195" r="2.5" />
      </g>
      <g className="example-words">
        <text x="168" y="72" textAnchor="end">
          {mass.mid} {massUnit()}
        </text>
        <text className="example-small" x="168" y="90" textAnchor="end">
          {mass.range}
        </text>
        <text x="348" y="286">
          {cost.mid}
        </text>
        <text className="example-small" x="348" y="304">
          what it costs, {cost.range}
        </text>
        <text x="436" y="118">
          1:26 h
        </text>
        <text className="example-small" x="436" y="136">
          1:10–1:42
        </text>
        <text className="example-small" x="8" y="24">
          For example an arm
        </text>
      </g>
    </svg>
  )
}
