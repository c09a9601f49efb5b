import { startTransition, useEffect, useMemo, useState } from 'react'
import type { Part } from '../../core/model/frame.ts'
import type { PartShape } from '../../state/store/types.ts'
import { useActions } from '../appContext.ts'

export interface PartShapes {
  /** By part id, as far as they are there. */
  readonly shapes: ReadonlyMap<string, PartShape>
  readonly pending: number
  /** Names of parts whose mesh could not be looked at. */
  readonly failed: readonly string[]
}

type LoadShape = (partId: string) => Promise<PartShape>
/** Null for a mesh that could not be looked at. */
type Answer = PartShape | null

/** What was asked for, so that two sections ask once and hold the same answer. */
const askedOf = new WeakMap<LoadShape, Map<string, Promise<Answer>>>()

/**
 * What a worker finds on the meshes of these parts; asked for when a section that needs it is
 * opened. All come at once: drawn anew for each of them, a frame of many parts would keep input
 * waiting.
 */
export function usePartShapes(parts: readonly Part[]): PartShapes {
  const { loadShape } = useActions()
  const [known, setKnown] = useState<ReadonlyMap<string, Answer>>(new Map())
  useEffect(() => {
    let isLeft = false
    const keys = parts.map(keyOf)
    const answers = parts.map((part) => askOnce(loadShape, part))
    void Promise.all(answers).then((found) => {
      if (isLeft) return
      startTransition(() => {
        setKnown((before) => {
          const isSame = keys.every((key, at) => before.has(key) && before.get(key) === found[at])
          return isSame ? before : new Map(keys.map((key, at) => [key, found[at] ?? null]))
        })
      })
    })
    return () => {
      isLeft = true
    }
  }, [parts, loadShape])
  return useMemo(() => {
    const shapes = new Map<string, PartShape>()
    const failed: string[] = []
    let pending = 0
    for (const part of parts) {
      const found = known.get(keyOf(part))
      if (found === undefined) pending += 1
      else if (found === null) failed.push(part.name)
      else shapes.set(part.id, found)
    }
    return { shapes, pending, failed }
  }, [parts, known])
}

function askOnce(loadShape: LoadShape, part: Part): Promise<Answer> {
  const asked = askedOf.get(loadShape) ?? new Map<string, Promise<Answer>>()
  askedOf.set(loadShape, asked)
  const key = keyOf(part)
  const answer =
    asked.get(key) ??
    loadShape(part.id).catch(() => {
      // Asked for again when something changes, or the section is next opened.
      asked.delete(key)
      return null
    })
  asked.set(key, answer)
  return answer
}

function keyOf({ id, meshHash, unit, pose }: Part): string {
  return `${id} ${meshHash} ${unit} ${pose.rotateDeg.join(' ')}`
}
