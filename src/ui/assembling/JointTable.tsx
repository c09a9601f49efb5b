import { Fragment, useMemo, useState } from 'react'
import { gripStack } from '../../core/aircraft/hardware/gripStack.ts'
import { frameHardware } from '../../core/aircraft/hardware/jointItems.ts'
import { isStrained, jointStrain, STRAINED } from '../../core/joints/jointStrain.ts'
import { isOpenLoop, pieceKey, type PlacedPieces } from '../../core/joints/placePieces.ts'
import type { Joint } from '../../core/model/joints.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { useActions, useAppState } from '../appContext.ts'
import { PlainButton } from '../fields/PlainButton.tsx'
import { showLength } from '../show.ts'
import { GripPicture } from './GripPicture.tsx'
import { JointFields } from './JointFields.tsx'
import { endWords, meetingWords } from './jointWords.ts'
import { useJoinable } from '../useJoinable.ts'
import { labelOf, pieceName, type Joinable } from './pieces.ts'

/** What is joined to what, each with its screw and what is wrong with it. */
export function JointTable({ placed }: { readonly placed: PlacedPieces }) {
  const parts = useJoinable()
  const printed = useAppState((state) => state.frame.parts)
  const aircraft = useAppState((state) => state.frame.aircraft)
  const { joints } = aircraft
  const { putAircraft } = useActions()
  const [openId, setOpen] = useState<string | null>(null)
  const hardware = useMemo(
    () => new Map(frameHardware({ parts: printed, aircraft }).map((each) => [each.joint.id, each])),
    [printed, aircraft],
  )
  const troubles = useMemo(
    () => new Map(joints.map((joint) => [joint.id, troublesOf(joint, placed)])),
    [joints, placed],
  )
  if (joints.length === 0) {
    return <p className="hint">Nothing is joined yet. Nothing is joined until you press Join.</p>
  }
  const put = (joint: Joint, next: Joint | null, what: string, gesture?: string) => {
    const rest = joints.flatMap((each) => (each === joint ? (next ?? []) : each))
    putAircraft({ joints: rest }, what, gesture)
  }
  return (
    <table className="joint-table">
      <thead>
        <tr>
          <th scope="col">Items</th>
          <th scope="col">Meet at</th>
          <th scope="col" className="joint-grip">
            Grip
          </th>
          <th scope="col">Screw</th>
        </tr>
      </thead>
      <tbody>
        {joints.map((joint) => {
          const { id, a, b, fastener } = joint
          const own = hardware.get(id)?.told
          const names = `${pieceName(parts, b)} on ${pieceName(parts, a)}`
          const warnings = [
            ...(troubles.get(id) ?? []),
            ...(own?.warnings.map((text) => toldWords(text)) ?? []),
          ]
          const isOpen = openId === id
          return (
            <Fragment key={id}>
              <tr className={warnings.length > 0 ? 'joint-strained' : undefined}>
                <th scope="row">
                  <PlainButton
                    className="quiet joint-opener"
                    aria-expanded={isOpen}
                    aria-label={`Joint of ${names}`}
                    onPress={() => {
                      setOpen(isOpen ? null : id)
                    }}
                  >
                    <strong>{labelOf(parts, b)}</strong> on <strong>{labelOf(parts, a)}</strong>
                  </PlainButton>
                  <span className="joint-names">{names}</span>
                </th>
                <td>{meetingWords(joint)}</td>
                <td className="joint-grip">
                  {own === undefined || own.count === 0 ? '–' : showLength(own.gripMm, 1)}
                </td>
                <td>
                  {fastener === null ? (
                    'none'
                  ) : (
                    <>
                      <span className="joint-screw">
                        {own !== undefined && own.count > 1 ? `${own.count} × ` : ''}
                        {own?.screw ?? fastener.thread}
                      </span>
                      <span className="range">{endWords(joint, parts)}</span>
                    </>
                  )}
                </td>
              </tr>
              {warnings.length === 0 ? null : (
                <tr className="joint-more">
                  <td colSpan={4}>
                    {warnings.map((warning) => (
                      <p className="caution" key={warning}>
                        {warning}
                      </p>
                    ))}
                  </td>
                </tr>
              )}
              {isOpen ? (
                <tr className="joint-more">
                  <td colSpan={4}>
                    <Grip hardware={hardware.get(id)} placed={placed} parts={parts} />
                    <JointFields
                      joint={joint}
                      names={names}
                      onChange={(next, what, gesture) => {
                        put(joint, next, `${what} of ${names}`, gesture)
                      }}
                      onRemove={() => {
                        setOpen(null)
                        put(joint, null, `take out the joint of ${names}`)
                      }}
                    />
                  </td>
                </tr>
              ) : null}
            </Fragment>
          )
        })}
      </tbody>
    </table>
  )
}

interface GripProps {
  readonly hardware: ReturnType<typeof frameHardware>[number] | undefined
  readonly placed: PlacedPieces
  readonly parts: readonly Joinable[]
}

function Grip({ hardware, placed, parts }: GripProps) {
  const stack = hardware === undefined ? null : gripStack(hardware, placed.motions)
  return stack === null ? null : <GripPicture stack={stack} parts={parts} />
}

function troublesOf(joint: Joint, { motions, loops, idle }: PlacedPieces): readonly string[] {
  const [a, b] = [motions.get(pieceKey(joint.a)), motions.get(pieceKey(joint.b))]
  if (idle.includes(joint.id) || a === undefined || b === undefined)
    return ['It hangs in the air: neither of its pieces is joined to what stands.']
  const loop = loops.find(({ jointId }) => jointId === joint.id)
  if (loop !== undefined && isOpenLoop(loop))
    return [`The ring of joints cannot close here: it is ${showLength(loop.misfitMm, 2)} off.`]
  const strain = jointStrain(joint, a, b)
  if (!isStrained(strain)) return []
  return [
    ...(strain.axesMm > STRAINED.axesMm
      ? [`Its axes are ${showLength(strain.axesMm, 2)} apart.`]
      : []),
    ...(strain.gapMm > STRAINED.gapMm
      ? [`Its faces stand ${showLength(strain.gapMm, 2)} apart.`]
      : []),
    ...(strain.gapMm < -STRAINED.gapMm
      ? [`Its faces are ${showLength(-strain.gapMm, 2)} in each other.`]
      : []),
  ]
}
