import type { ChosenUse, HoleUse } from '../../core/model/drill.ts'
import { JOINT_THREADS } from '../../core/model/joints.ts'
import { DRILL_LIMITS } from '../../core/data/limits.ts'
import { useActions, useReadState } from '../appContext.ts'
import { Choice } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import type { DrillGroup } from './drillGroups.ts'

const THREADED = { screw: 'screw passes', tapped: 'thread cut', insert: 'insert' } as const
type ThreadedKind = keyof typeof THREADED

const OPTIONS = [
  ...(Object.keys(THREADED) as ThreadedKind[]).flatMap((kind) =>
    JOINT_THREADS.map((thread) => ({
      id: `${kind} ${thread}`,
      name: `${thread} ${THREADED[kind]}`,
    })),
  ),
  { id: 'damper', name: 'damper' },
  { id: 'shaft', name: 'rod, tube or peg' },
  { id: 'none', name: 'nothing' },
  { id: 'known', name: 'as joint or diameter tell' },
]

const KNOWN_WORDS = { joint: 'by its joint', chosen: 'chosen', guess: 'a guess' } as const

/** What alike holes are for: a choice, kept with the part. */
export function HoleUseChoice({ group }: { readonly group: DrillGroup }) {
  const { updateParts } = useActions()
  const readState = useReadState()
  const { first, rows, sign } = group
  const { use, known, part, partId } = first
  const put = (next: HoleUse | null): void => {
    const own = readState().frame.parts.find(({ id }) => id === partId)
    const others = (own?.holeUses ?? []).filter(
      ({ centreMm }) => !rows.some(({ hole }) => sameSpot(hole.centreMm, centreMm)),
    )
    const chosen =
      next === null
        ? []
        : rows.map(({ hole }): ChosenUse => {
            const { centreMm, diameterMm } = hole
            return { centreMm, diameterMm, use: next }
          })
    updateParts([partId], { holeUses: [...others, ...chosen] })
  }
  const label = `What hole ${sign} of ${part} is for`
  return (
    <div className="drill-use">
      <Choice
        label={label}
        bare
        options={OPTIONS.filter(({ id }) => id !== 'known' || known === 'chosen')}
        value={'thread' in use ? `${use.kind} ${use.thread}` : use.kind}
        onChange={(id) => {
          put(id === 'known' ? null : chosenUse(id, first.diameterMm))
        }}
      />
      <small>{KNOWN_WORDS[known]}</small>
      {use.kind === 'damper' && known !== 'joint' ? (
        <>
          <NumberBox
            label="Neck"
            limits={DRILL_LIMITS.neckMm}
            value={use.neckMm}
            step={0.1}
            unit="mm"
            onChange={(neckMm) => {
              put({ ...use, neckMm })
            }}
          />
          <NumberBox
            label="Groove"
            limits={DRILL_LIMITS.grooveMm}
            value={use.grooveMm}
            step={0.1}
            unit="mm"
            onChange={(grooveMm) => {
              put({ ...use, grooveMm })
            }}
            onEmpty={() => {
              put({ ...use, grooveMm: null })
            }}
          />
        </>
      ) : null}
      {use.kind === 'shaft' && known !== 'joint' ? (
        <NumberBox
          label="Shaft"
          limits={DRILL_LIMITS.shaftMm}
          value={use.shaftMm}
          step={0.1}
          unit="mm"
          onChange={(shaftMm) => {
            put({ kind: 'shaft', shaftMm })
          }}
        />
      ) : null}
    </div>
  )
}

function chosenUse(id: string, diameterMm: number): HoleUse {
  const [kind, thread] = id.split(' ')
  if (kind === 'damper') return { kind, neckMm: tenths(diameterMm), grooveMm: null }
  if (kind === 'shaft') return { kind, shaftMm: tenths(diameterMm) }
  if (kind === 'screw' || kind === 'tapped' || kind === 'insert') {
    return { kind, thread: JOINT_THREADS.find((each) => each === thread) ?? 'M3' }
  }
  return { kind: 'none' }
}

/** As a part's mesh is good for. */
const tenths = (mm: number): number => Math.max(DRILL_LIMITS.shaftMm.min, Math.round(10 * mm) / 10)

function sameSpot(a: ChosenUse['centreMm'], b: ChosenUse['centreMm']): boolean {
  return a.every((value, k) => Math.abs(value - (b[k] ?? 0)) < 0.05)
}
