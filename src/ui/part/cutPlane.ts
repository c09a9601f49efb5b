import { useSyncExternalStore } from 'react'
import type { SectionAxis } from '../../core/census/section/types.ts'
import { poseBounds } from '../../core/mesh/poseBounds.ts'
import type { Part } from '../../core/model/frame.ts'
import type { Bounds } from '../../core/model/mesh.ts'

/** Where a part is cut for its section: a share (0–1) of its extent along an axis of the bed. */
export interface CutPlane {
  readonly axis: SectionAxis
  readonly share: number
}

/**
 * By part id, for as long as the visit: on paper the part is cut where it was cut on the screen.
 */
let planes: ReadonlyMap<string, CutPlane> = new Map()
const listeners = new Set<() => void>()

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => {
    listeners.delete(listener)
  }
}

const AXES = { x: 0, y: 1, z: 2 } as const

/** How long a placed part is along an axis, mm. */
export function cutLengthMm({ min, max }: Bounds, axis: SectionAxis): number {
  return max[AXES[axis]] - min[AXES[axis]]
}

/** A step of the plane: a layer, or 1 mm, finer in what is short. mm */
export function cutStepMm(axis: SectionAxis, lengthMm: number, layerMm: number): number {
  if (axis === 'z') return layerMm
  return lengthMm >= 20 ? 1 : 0.1
}

export function moveCutPlane(partId: string, plane: CutPlane): void {
  planes = new Map(planes).set(partId, plane)
  for (const listener of listeners) listener()
}

const THROUGH = { x: { axis: 'x', share: 0.5 }, y: { axis: 'y', share: 0.5 } } as const

/** The axis along the longer side of a part on the bed: cut by it, the part is cut across. */
export function longAxis({ pose }: Part, boundsMm: Bounds): 'x' | 'y' {
  const { min, max } = poseBounds(boundsMm, pose)
  return max[0] - min[0] >= max[1] - min[1] ? 'x' : 'y'
}

/** Across the middle of the longer side until it is moved. */
export function useCutPlane(part: Part, boundsMm: Bounds): CutPlane {
  const moved = useSyncExternalStore(subscribe, () => planes.get(part.id))
  return moved ?? THROUGH[longAxis(part, boundsMm)]
}
