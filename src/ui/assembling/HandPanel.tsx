import type { JoinablePart } from '../../core/joints/equalPatterns.ts'
import { offAxesMm } from '../../core/joints/turnOver.ts'
import type { FlatFace, Mouth } from '../../core/joints/types.ts'
import type { LoosePiece } from '../../core/joints/waysFor.ts'
import type { StandingPiece } from '../../core/joints/standingPieces.ts'
import { JOINT_BORES_MOST } from '../../core/data/limits.ts'
import type { Vec3 } from '../../core/model/mesh.ts'
import { Choice } from '../fields/Choice.tsx'
import { PlainButton } from '../fields/PlainButton.tsx'
import { lengthUnit } from '../../core/words/shownUnits.ts'
import { showArea, showLength, showMm, trueMinus } from '../show.ts'
import { FreedomFields } from './JointFields.tsx'
import { useJoinable } from '../useJoinable.ts'
import { pieceName } from './pieces.ts'
import type { Hand } from './useHand.ts'

const BY = [
  { id: 'holes', name: 'hole on hole, shaft in bore' },
  { id: 'faces', name: 'face on face' },
  { id: 'drawn', name: 'as the files lie' },
] as const

interface HandPanelProps {
  readonly loose: LoosePiece
  readonly standing: readonly StandingPiece[]
  readonly shapes: Readonly<Record<string, JoinablePart>>
  /** On what: a place in `standing`. */
  readonly on: number
  readonly onOn: (place: number) => void
  readonly hand: Hand
  readonly onJoin: () => void
}

/** Two pieces joined by what a hand picks on each. */
export function HandPanel({ loose, standing, shapes, on, onOn, hand, onJoin }: HandPanelProps) {
  const parts = useJoinable()
  const stands = standing[on]
  const { by, pairs, first, second, joint, change } = hand
  if (stands === undefined) return null
  const [onShape, ownShape] = [shapes[stands.partId], shapes[loose.partId]]
  if (onShape === undefined || ownShape === undefined) return null
  const offMm = joint === null ? 0 : offAxesMm(joint)
  return (
    <div className="hand-panel" role="group" aria-label="Joined by hand">
      <Choice
        label="On"
        value={String(on)}
        options={standing.map((each, i) => ({ id: String(i), name: pieceName(parts, each) }))}
        onChange={(id) => {
          onOn(Number(id))
        }}
      />
      <Choice
        label="By"
        value={by}
        options={BY}
        onChange={(next) => {
          change({ by: next, pairs: [], first: null, second: null, typed: {} })
        }}
      />
      {by === 'drawn' ? null : (
        <div className="hand-lists">
          <PickList
            name={`On ${pieceName(parts, stands)}`}
            labels={by === 'holes' ? onShape.mouths.map(mouthWords) : onShape.faces.map(faceWords)}
            picked={first}
            onPick={(place) => {
              change({ first: place, typed: {} })
            }}
          />
          <PickList
            name={`On ${pieceName(parts, loose)}`}
            labels={
              by === 'holes' ? ownShape.mouths.map(mouthWords) : ownShape.faces.map(faceWords)
            }
            picked={second}
            onPick={(place) => {
              change({ second: place, typed: {} })
            }}
          />
        </div>
      )}
      {joint === null ? (
        <p className="hint">
          Pick one on either piece. Of one hole the turn stays free; a second pair settles it.
        </p>
      ) : (
        <>
          <FreedomFields
            joint={joint}
            onChange={(patch) => {
              change({ typed: { ...hand.typed, ...patch } })
            }}
          />
          {offMm > OFF_MM ? (
            <p className="caution">
              The axes come to lie {showLength(offMm, 2)} apart: these holes are not as far from
              each other on both pieces. Join at one hole, or redraw.
            </p>
          ) : null}
          <div className="button-line">
            <PlainButton className="firm" onPress={onJoin}>
              Join by hand
            </PlainButton>
            {by === 'holes' && first !== null && second !== null ? (
              <PlainButton
                className="quiet"
                isDisabled={pairs.length + 1 >= JOINT_BORES_MOST}
                onPress={() => {
                  change({ pairs: [...pairs, [first, second]], first: null, second: null })
                }}
              >
                One more pair
              </PlainButton>
            ) : null}
            {pairs.length > 0 ? (
              <span className="hint">
                {pairs.length} {pairs.length === 1 ? 'pair' : 'pairs'} picked
              </span>
            ) : null}
          </div>
        </>
      )}
    </div>
  )
}

/** Axes further apart do not take a screw of a fine fit. mm (common practice, no source) */
const OFF_MM = 0.15

interface PickListProps {
  readonly name: string
  readonly labels: readonly string[]
  readonly picked: number | null
  readonly onPick: (place: number) => void
}

function PickList({ name, labels, picked, onPick }: PickListProps) {
  return (
    <div className="pick-list">
      <p className="range">{name}</p>
      <ul aria-label={name}>
        {labels.map((label, i) => (
          <li key={label}>
            <button
              type="button"
              className="quiet"
              aria-pressed={i === picked}
              onClick={() => {
                onPick(i)
              }}
            >
              {label}
            </button>
          </li>
        ))}
      </ul>
      {labels.length === 0 ? <p className="hint">None was found.</p> : null}
    </div>
  )
}

function mouthWords({ bore: { kind, diameterMm }, atMm, out }: Mouth): string {
  const word = kind === 'peg' ? 'shaft' : 'hole'
  return `${word} ${showLength(diameterMm, 1)} at ${placeWords(atMm)}, ${sideWords(out)}`
}

function faceWords({ areaMm2, centreMm, normal }: FlatFace): string {
  return `face of ${showArea(areaMm2)} at ${placeWords(centreMm)}, ${sideWords(normal)}`
}

function placeWords(at: Vec3): string {
  return `${at.map((mm) => trueMinus(showMm(mm, 1))).join(', ')} ${lengthUnit()}`
}

const SIDES = [
  ['x', '−x'],
  ['y', '−y'],
  ['up', 'down'],
] as const

/** Which way it looks, in the part’s own axes. */
function sideWords(way: Vec3): string {
  const k = ([0, 1, 2] as const).reduce((most, each) =>
    Math.abs(way[each]) > Math.abs(way[most]) ? each : most,
  )
  return Math.abs(way[k]) > 0.99 ? `to ${SIDES[k][way[k] > 0 ? 0 : 1]}` : 'aslant'
}
