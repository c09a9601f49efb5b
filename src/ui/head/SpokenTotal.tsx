import { useEffect, useState } from 'react'
import { limitWords } from '../../core/frame/sayings.ts'
import { frameSummary } from '../../state/store/derived.ts'
import { useAppState } from '../appContext.ts'
import { showMass } from '../show.ts'

/** So long nothing may change before the total is said: a slider that is dragged says it once. */
const QUIET_MS = 900

/** Says the frame's mass after each change, once it stands, to those who do not see it move. */
export function SpokenTotal() {
  const { sum, runningCount } = useAppState(frameSummary)
  const { strictest } = sum.limits
  const words =
    runningCount > 0
      ? null
      : `${showMass(sum.printed.massG.mid)} printed${strictest === null ? '' : `, ${limitWords(strictest)}`}`
  const [said, setSaid] = useState('')
  useEffect(() => {
    if (words === null) return
    const timer = setTimeout(() => {
      setSaid(words)
    }, QUIET_MS)
    return () => {
      clearTimeout(timer)
    }
  }, [words])
  return (
    <p className="unseen" role="status">
      {said}
    </p>
  )
}
