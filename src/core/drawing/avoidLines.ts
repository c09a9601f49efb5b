import { meet, type LeaderRoom, type Point, type Side } from './placeLeaders.ts'
import type { Anchors } from './types.ts'

/**
 * The same places for a leader line to end, with each of these lines counted that a straight leg to
 * that side would run across.
 */
export function avoidLines(
  anchors: Anchors,
  lines: readonly (readonly [Point, Point])[],
  room: LeaderRoom,
): Anchors {
  const seen = (side: Side) => {
    const anchor = anchors[side]
    const end =
      side === 'left' || side === 'right'
        ? { x: room[side], y: anchor.y }
        : { x: anchor.x, y: room[side] }
    const crossed = lines.filter((line) => meet([anchor, end], line)).length
    return { ...anchor, crossed: anchor.crossed + crossed }
  }
  return { left: seen('left'), right: seen('right'), top: seen('top'), bottom: seen('bottom') }
}
