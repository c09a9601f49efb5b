import { useEffect, useState } from 'react'
import type { Repeat } from '../../core/joints/repeatWay.ts'
import type { LoosePiece, Meeting, Way } from '../../core/joints/waysFor.ts'
import { useActions } from '../appContext.ts'

/** A frame whose offers are found, and by what they are told from others. */
export interface MeetingFrame {
  readonly frame: Meeting
  readonly offersId: string
}

const NONE: readonly Way[] = []

/** The ways of a loose piece, looked for by a worker; none, and `isLooking`, until it has told. */
export function useWays(
  loose: LoosePiece | null,
  meeting: MeetingFrame | null,
): { readonly ways: readonly Way[]; readonly isLooking: boolean } {
  const { listWays } = useActions()
  const [found, setFound] = useState<{
    readonly loose: LoosePiece
    readonly meeting: MeetingFrame
    readonly ways: readonly Way[]
  } | null>(null)
  useEffect(() => {
    if (loose === null || meeting === null) return undefined
    const abort = new AbortController()
    void listWays({ loose, ...meeting }, abort.signal).then((ways) => {
      if (!abort.signal.aborted) setFound({ loose, meeting, ways: ways ?? NONE })
    })
    return () => {
      abort.abort()
    }
  }, [loose, meeting, listWays])
  if (loose === null || meeting === null) return { ways: NONE, isLooking: false }
  const isTold = found?.loose === loose && found.meeting === meeting
  return { ways: isTold ? found.ways : NONE, isLooking: !isTold }
}

/** How the way can be repeated; once, until a worker has told more. */
export function useRepeats(
  way: Way | null,
  others: readonly LoosePiece[],
  meeting: MeetingFrame | null,
): readonly Repeat[] {
  const { listRepeats } = useActions()
  const [found, setFound] = useState<{
    readonly way: Way
    readonly others: readonly LoosePiece[]
    readonly repeats: readonly Repeat[]
  } | null>(null)
  useEffect(() => {
    if (way === null || meeting === null || others.length === 0) return undefined
    const abort = new AbortController()
    void listRepeats({ way, others, ...meeting }, abort.signal).then((repeats) => {
      if (repeats !== null && !abort.signal.aborted) setFound({ way, others, repeats })
    })
    return () => {
      abort.abort()
    }
  }, [way, others, meeting, listRepeats])
  if (way === null || meeting === null) return []
  if (found?.way === way && found.others === others) return found.repeats
  const { joint, motion } = way
  return [{ kind: 'once', wanted: 1, placed: [{ joint, motion }], missing: null }]
}
