import { useCallback, useContext, useEffect, useRef, useState } from 'react'
import type { FrameSign } from '../../core/aircraft/report/frameSigns.ts'
import { useActions, useAppState } from '../appContext.ts'
import { StillDrawing } from '../inTurn/stillDrawing.ts'
import { useFramePlaces } from '../useFramePlaces.ts'
import { useAnswer } from './useAnswer.ts'

const NONE: readonly FrameSign[] = []

/** What of the present frame runs into what; nothing until a worker has told. */
export function useFrameSigns(): readonly FrameSign[] {
  const { listSigns } = useActions()
  const placed = useFramePlaces()
  const joints = useAppState(({ frame }) => frame.aircraft.joints)
  // Recipes move nothing.
  const named = useAppState(({ frame: { parts, aircraft } }) =>
    JSON.stringify([
      parts.map(({ id, name, role, meshHash, unit }) => [id, name, role, meshHash, unit]),
      aircraft.items.map(({ id, name, body }) => [id, name, body]),
    ]),
  )
  const begin = useContext(StillDrawing)
  const [isTold, setTold] = useState(false)
  // Nobody waits for a worker's answer to a sheet that was left.
  const left = useRef(new AbortController())
  useEffect(() => {
    left.current = new AbortController()
    return () => {
      left.current.abort()
    }
  }, [])
  useEffect(() => (isTold ? undefined : begin?.()), [isTold, begin])
  const ask = useCallback(
    async () => {
      const found = await listSigns(left.current.signal)
      setTold(true)
      return found
    },
    // Another frame is another question.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [listSigns, placed, joints, named],
  )
  return useAnswer(ask) ?? NONE
}
