import { useEffect, useMemo, useRef, useState } from 'react'
import type { Part } from '../../core/frame.ts'
import type { PartShape } from '../../state/types.ts'
import { useActions } from '../appContext.ts'

export interface PartShapes {
  /** By part id, as far as they are there. */
  readonly shapes: ReadonlyMap<string, PartShape>
  readonly pending: number
  /** Names of parts whose mesh could not be looked at. */
  readonly failed: readonly string[]
}

interface Known {
  readonly key: string
  readonly shape: PartShape | null
}

/** What a worker finds on the meshes of these parts; asked for when a section that needs it is opened. */
export function usePartShapes(parts: readonly Part[]): PartShapes {
  const { loadShape } = useActions()
  const [known, setKnown] = useState<ReadonlyMap<string, Known>>(new Map())
  const asked = useRef(new Map<string, string>())
  useEffect(() => {
    for (const part of parts) {
      const key = keyOf(part)
      if (asked.current.get(part.id) === key) continue
      asked.current.set(part.id, key)
      const keep = (shape: PartShape | null) => {
        setKnown((before) => new Map(before).set(part.id, { key, shape }))
      }
      loadShape(part.id).then(keep, () => {
        keep(null)
      })
    }
  }, [parts, loadShape])
  return useMemo(() => {
    const shapes = new Map<string, PartShape>()
    const failed: string[] = []
    let pending = 0
    for (const part of parts) {
      const found = known.get(part.id)
      if (found?.key !== keyOf(part)) pending += 1
      else if (found.shape === null) failed.push(part.name)
      else shapes.set(part.id, found.shape)
    }
    return { shapes, pending, failed }
  }, [parts, known])
}

function keyOf({ meshHash, unit, pose }: Part): string {
  return `${meshHash} ${unit} ${pose.rotateDeg.join(' ')}`
}
