import type { Joint, JointEnd } from '../model/joints.ts'
import { isSameBore } from './equalPatterns.ts'

/**
 * A joint that is being made, by bores that other joints end a screw of its thread in: the one
 * screw goes through all of them, so this one hands it on.
 */
export function handOn<J extends Omit<Joint, 'id'>>(joint: J, others: readonly Joint[]): J {
  const { a, b, fastener } = joint
  if (fastener?.end !== 'nut') return joint
  const ending = others.filter(
    (other) => other.fastener?.thread === fastener.thread && other.fastener.end !== 'through',
  )
  const isShared = a.bores.every((_, i) =>
    ending.some((other) =>
      [a, b].some((end) => [other.a, other.b].some((each) => meets(end, i, each))),
    ),
  )
  return isShared ? { ...joint, fastener: { ...fastener, end: 'through' } } : joint
}

function meets(end: JointEnd, at: number, other: JointEnd): boolean {
  const bore = end.bores[at]
  return (
    bore !== undefined &&
    end.partId === other.partId &&
    end.piece === other.piece &&
    other.bores.some((each) => isSameBore(each, bore))
  )
}
