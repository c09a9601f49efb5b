import { useEffect, useMemo, useState } from 'react'
import type { RigidMap } from '../../core/mesh/rigidMaps.ts'
import { useActions } from '../appContext.ts'

export interface LaidOne {
  readonly partId: string
  readonly motion: RigidMap
}

/** How much each of `pieces` is in each of `others`, mm³; null until a worker has told. */
export function useClashes(
  pieces: readonly LaidOne[],
  others: readonly LaidOne[],
  isSkipped: (piece: number, other: number) => boolean,
): readonly (readonly number[])[] | null {
  const { findClashes } = useActions()
  const [found, setFound] = useState<{
    readonly key: string
    readonly volumes: readonly (readonly number[])[]
  } | null>(null)
  const asks = useMemo(
    () =>
      pieces.flatMap((_, i) =>
        others.flatMap((__, j) => (isSkipped(i, j) ? [] : [[i, pieces.length + j] as const])),
      ),
    [pieces, others, isSkipped],
  )
  const key = useMemo(() => JSON.stringify([pieces, others, asks]), [pieces, others, asks])
  useEffect(() => {
    const abort = new AbortController()
    void findClashes([...pieces, ...others], asks, abort.signal).then((volumesMm3) => {
      if (volumesMm3 === null || abort.signal.aborted) return
      const told = new Map(asks.map(([i, j], n) => [`${i} ${j}`, volumesMm3[n] ?? 0]))
      const volumes = pieces.map((_, i) =>
        others.map((__, j) => told.get(`${i} ${pieces.length + j}`) ?? 0),
      )
      setFound({ key, volumes })
    })
    return () => {
      abort.abort()
    }
    // The key says all that is asked.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [key, findClashes])
  return found?.key === key ? found.volumes : null
}
