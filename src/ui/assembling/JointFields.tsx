import { JOINT_LIMITS, TURN_LIMITS } from '../../core/data/limits.ts'
import { fastenerFor } from '../../core/joints/fastenerFor.ts'
import { turnsOver } from '../../core/joints/turnOver.ts'
import {
  JOINT_THREADS,
  type Joint,
  type JointFastener,
  type JointThread,
} from '../../core/model/joints.ts'
import { Choice, type Option } from '../fields/Choice.tsx'
import { NumberBox } from '../fields/NumberBox.tsx'
import { PlainButton } from '../fields/PlainButton.tsx'

const THREADS: readonly Option<JointThread | 'none'>[] = [
  { id: 'none', name: 'nothing bought' },
  ...JOINT_THREADS.map((size) => ({ id: size, name: size })),
]

const ENDS = [
  { id: 'nut', name: 'in a nut' },
  { id: 'insert', name: 'in an insert' },
  { id: 'tapped', name: 'in the plastic or a thread' },
  { id: 'post', name: 'in a post that fills the gap' },
  { id: 'through', name: 'goes on to the next joint' },
] as const satisfies readonly { id: JointFastener['end']; name: string }[]

/** A step of the turn of a joint about its one hole. */
const TURN_STEP_DEG = 15

interface FreedomFieldsProps {
  readonly joint: Omit<Joint, 'id'>
  readonly onChange: (patch: Partial<Joint>, what: string) => void
}

/** What the holes and faces of a joint leave free. */
export function FreedomFields({ joint, onChange }: FreedomFieldsProps) {
  const { a, b, kind, turnDeg, slideMm, gapMm } = joint
  const touches = a.face !== null && b.face !== null
  if (kind === 'drawn') return <p className="hint">It stays where the files put it.</p>
  return (
    <>
      {a.bores.length < 2 ? (
        <NumberBox
          label="Turn"
          limits={TURN_LIMITS}
          value={turnDeg}
          step={TURN_STEP_DEG}
          digits={1}
          unit="°"
          onChange={(value) => {
            onChange({ turnDeg: value }, 'turn')
          }}
        />
      ) : null}
      {touches ? (
        <NumberBox
          label="Gap between the faces"
          limits={JOINT_LIMITS.gapMm}
          value={gapMm}
          step={0.5}
          unit="mm"
          onChange={(value) => {
            onChange({ gapMm: value }, 'gap')
          }}
        />
      ) : (
        <NumberBox
          label="Slide along the axis"
          limits={JOINT_LIMITS.slideMm}
          value={slideMm}
          step={1}
          unit="mm"
          onChange={(value) => {
            onChange({ slideMm: value }, 'slide')
          }}
        />
      )}
    </>
  )
}

interface JointFieldsProps {
  readonly joint: Joint
  readonly names: string
  readonly onChange: (joint: Joint, what: string, gesture?: string) => void
  readonly onRemove: () => void
}

/** All that can be changed of a joint that stands. */
export function JointFields({ joint, names, onChange, onRemove }: JointFieldsProps) {
  const { fastener, a, b } = joint
  const over = turnsOver(joint)
  return (
    <div
      className="craft-inset joint-fields"
      role="group"
      aria-label={`Joint of ${names}, changed`}
    >
      <FreedomFields
        joint={joint}
        onChange={(patch, what) => {
          onChange({ ...joint, ...patch }, `change the ${what}`, `${what} ${joint.id}`)
        }}
      />
      {a.bores.length === 0 ? null : (
        <Choice
          label="Held by"
          value={fastener?.thread ?? 'none'}
          options={THREADS}
          onChange={(thread) => {
            const end = fastener?.end ?? fastenerFor(a.bores, b.bores)?.end ?? 'nut'
            const next = thread === 'none' ? null : { thread, end }
            onChange({ ...joint, fastener: next }, 'change the screw')
          }}
        />
      )}
      {fastener === null ? null : (
        <Choice
          label="It ends"
          value={fastener.end}
          options={ENDS}
          onChange={(end) => {
            onChange({ ...joint, fastener: { ...fastener, end } }, 'change the end of the screw')
          }}
        />
      )}
      <div className="button-line">
        <PlainButton
          className="quiet"
          isDisabled={over.length === 0}
          onPress={() => {
            const [next] = over
            if (next !== undefined) onChange(next, 'turn over the joint')
          }}
        >
          Turn over
        </PlainButton>
        <PlainButton
          className="quiet"
          isDisabled={over.length < 2}
          onPress={() => {
            const next = over[1]
            if (next !== undefined) onChange(next, 'change sides in the joint')
          }}
        >
          Other side
        </PlainButton>
        <PlainButton className="quiet" onPress={onRemove}>
          Take out
        </PlainButton>
      </div>
    </div>
  )
}
