import type { StoreApi } from 'zustand/vanilla'
import type { Frame } from '../../core/model/frame.ts'
import type { Joint, JointEnd } from '../../core/model/joints.ts'
import type { Actions, AppState } from '../store/types.ts'
import type { History } from './history.ts'

/** Actions on what meets what. Places and screws follow from it and are kept nowhere. */
export function createJointActions(
  store: StoreApi<AppState>,
  history: History,
  newId: () => string,
): Pick<Actions, 'addJoint' | 'dropJoint'> {
  const frame = () => store.getState().frame

  function commit(label: string, joints: readonly Joint[]): void {
    history.commit(label, { ...frame(), aircraft: { ...frame().aircraft, joints } })
  }

  return {
    addJoint(joint) {
      const why = whyNoJoint(frame(), joint)
      if (why !== null) {
        store.setState({ notice: { text: `Nothing was joined: ${why}`, canUndo: false } })
        return
      }
      const added = { ...joint, id: newId() }
      commit(`join ${jointWords(frame(), joint)}`, [...frame().aircraft.joints, added])
    },
    dropJoint(id) {
      const { joints } = frame().aircraft
      const joint = joints.find((each) => each.id === id)
      if (joint === undefined) return
      commit(
        `undo the joint of ${jointWords(frame(), joint)}`,
        joints.filter((each) => each !== joint),
      )
    },
  }
}

function whyNoJoint(frame: Frame, { a, b, kind }: Omit<Joint, 'id'>): string | null {
  for (const { partId, piece } of [a, b]) {
    const part = frame.parts.find(({ id }) => id === partId)
    if (part === undefined) return 'a part of it is not in the frame.'
    if (piece >= part.quantity)
      return (
        `“${part.name}” has ${part.quantity} ${part.quantity === 1 ? 'piece' : 'pieces'} that fly, ` +
        `not ${piece + 1}.`
      )
  }
  if (a.partId === b.partId && a.piece === b.piece) return 'a piece cannot be joined to itself.'
  if (a.bores.length !== b.bores.length) return 'each hole has to meet one hole.'
  const isPlaced = kind === 'drawn' || a.bores.length > 0 || (a.face !== null && b.face !== null)
  return isPlaced ? null : 'neither holes nor faces say how the pieces meet.'
}

function jointWords(frame: Frame, { a, b }: Pick<Joint, 'a' | 'b'>): string {
  const name = ({ partId }: JointEnd) =>
    `“${frame.parts.find(({ id }) => id === partId)?.name ?? 'a part'}”`
  return `${name(a)} and ${name(b)}`
}
