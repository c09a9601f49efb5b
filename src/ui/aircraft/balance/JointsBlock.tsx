import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components'
import type { JointOffer } from '../../../core/joints/offerJoints.ts'
import type { Joint, JointEnd } from '../../../core/model/joints.ts'
import { useActions, useAppState } from '../../appContext.ts'

/** So many ways are told at first; the best of each pair come first. */
const MOST_TOLD = 12

type Looking =
  | { readonly kind: 'no' | 'yes' | 'failed' }
  | { readonly kind: 'done'; readonly offers: readonly JointOffer[] }

/** What is joined to what, and holes that could meet. */
export function JointsBlock() {
  const parts = useAppState((state) => state.frame.parts)
  const joints = useAppState((state) => state.frame.aircraft.joints)
  const { addJoint, dropJoint, listJointOffers } = useActions()
  const [looking, setLooking] = useState<Looking>({ kind: 'no' })
  const abort = useRef<AbortController>(null)
  useEffect(() => () => abort.current?.abort(), [])
  const nameOf = ({ partId, piece }: JointEnd) => {
    const part = parts.find(({ id }) => id === partId)
    if (part === undefined) return 'removed part'
    return part.quantity > 1 ? `${part.name} ${piece + 1}` : part.name
  }
  const look = async () => {
    abort.current?.abort()
    abort.current = new AbortController()
    const { signal } = abort.current
    setLooking({ kind: 'yes' })
    const offers = await listJointOffers(signal)
    if (signal.aborted) return
    setLooking(offers === null ? { kind: 'failed' } : { kind: 'done', offers })
  }
  const free = looking.kind === 'done' ? freeOffers(looking.offers, joints) : []
  return (
    <section className="joints" aria-label="Joints">
      <h4>Joints</h4>
      <ul className="joint-list">
        {joints.map((joint) => (
          <li key={joint.id}>
            <span>
              {nameOf(joint.a)} – {nameOf(joint.b)}
            </span>
            <span className="range">{holesWords(joint)}</span>
            <Button
              className="quiet"
              aria-label={`Undo the joint of ${nameOf(joint.a)} and ${nameOf(joint.b)}`}
              onPress={() => {
                dropJoint(joint.id)
              }}
            >
              Undo
            </Button>
          </li>
        ))}
      </ul>
      <div className="button-line">
        <Button
          className="outlined"
          isDisabled={looking.kind === 'yes' || parts.length === 0}
          onPress={() => {
            void look()
          }}
        >
          Look for holes that meet
        </Button>
        <span className="hint" role="status">
          {lookingWords(looking, free.length)}
        </span>
      </div>
      <ul className="joint-list" aria-label="Ways to join">
        {free.slice(0, MOST_TOLD).map(({ joint, verdict, isDrawn }) => {
          const words = `${nameOf(joint.a)} – ${nameOf(joint.b)}`
          const way = wayOf(free, joint)
          return (
            <li key={`${words} ${way}`}>
              <span>{words}</span>
              <span className="range">
                {holesWords(joint)}
                {isDrawn ? ', as the files lie' : ''}
                {verdict.covered > 0 ? `, ${verdict.covered} other holes covered` : ''}
                {way > 1 ? `, way ${way}` : ''}
              </span>
              <Button
                className="quiet"
                aria-label={`Join ${words}${way > 1 ? `, way ${way}` : ''}`}
                onPress={() => {
                  addJoint(joint)
                }}
              >
                Join
              </Button>
            </li>
          )
        })}
      </ul>
    </section>
  )
}

/** Those of pieces that do not hang together yet. */
function freeOffers(
  offers: readonly JointOffer[],
  joints: readonly Joint[],
): readonly JointOffer[] {
  let groups: readonly (readonly JointEnd[])[] = []
  for (const { a, b } of joints) {
    const met = groups.filter((group) => holds(group, a) || holds(group, b))
    groups = [...groups.filter((group) => !met.includes(group)), [...met.flat(), a, b]]
  }
  return offers.filter(
    ({ joint: { a, b } }) => !groups.some((group) => holds(group, a) && holds(group, b)),
  )
}

const holds = (group: readonly JointEnd[], piece: JointEnd): boolean =>
  group.some((each) => isPiece(each, piece))

function isPiece(one: JointEnd, other: JointEnd): boolean {
  return one.partId === other.partId && one.piece === other.piece
}

/** Its place among the ways of the same two pieces, from 1. */
function wayOf(offers: readonly JointOffer[], joint: JointOffer['joint']): number {
  const same = offers.filter(
    (each) => isPiece(each.joint.a, joint.a) && isPiece(each.joint.b, joint.b),
  )
  return same.findIndex((each) => each.joint === joint) + 1
}

function holesWords({ a, fastener }: Pick<Joint, 'a' | 'fastener'>): string {
  const { length } = a.bores
  const holes = `${length} ${length === 1 ? 'hole' : 'holes'}`
  return fastener === null ? holes : `${holes}, ${fastener.thread} ${END_WORDS[fastener.end]}`
}

const END_WORDS = {
  nut: 'with a nut',
  insert: 'into an insert',
  tapped: 'into the plastic',
  through: 'going on',
} as const

function lookingWords({ kind }: Looking, free: number): string {
  if (kind === 'no') return 'Nothing is joined until you press Join.'
  if (kind === 'yes') return 'Looking at every hole…'
  if (kind === 'failed') return 'The meshes could not be looked at. Try again.'
  if (free === 0) return 'No two or more holes meet of pieces that do not hang together yet.'
  if (free > MOST_TOLD) return `${free} ways, of which ${MOST_TOLD} are told.`
  return `${free} ${free === 1 ? 'way' : 'ways'}; undo takes a Join back.`
}
