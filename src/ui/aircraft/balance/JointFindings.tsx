import { useCallback, useMemo } from 'react'
import { frameHardware } from '../../../core/aircraft/hardware/jointItems.ts'
import { screwWords } from '../../../core/aircraft/hardware/screwWords.ts'
import {
  jointFindingSteps,
  type JoinedPart,
  type JointFinding,
} from '../../../core/aircraft/report/jointFindings.ts'
import type { Aircraft } from '../../../core/model/aircraft.ts'
import { toldWords } from '../../../core/words/toldWords.ts'
import { useInSlices } from '../../inTurn/useInSlices.ts'

const NONE: readonly JointFinding[] = []

interface JointFindingsProps {
  readonly parts: readonly JoinedPart[]
  readonly aircraft: Aircraft
}

/** The screws that the joints take, and what is left over or wrong where pieces are joined. */
export function JointFindings({ parts, aircraft }: JointFindingsProps) {
  const screws = useMemo(() => {
    const hardware = frameHardware({ parts: parts.map(({ part }) => part), aircraft })
    return screwWords(hardware.map(({ told }) => told))
  }, [parts, aircraft])
  const begin = useCallback(() => jointFindingSteps(parts, aircraft), [parts, aircraft])
  const findings = useInSlices(begin) ?? NONE
  if (screws === null && findings.length === 0) return null
  return (
    <section aria-label="Put together">
      {screws === null ? null : <p>Screws from joints: {screws}.</p>}
      {findings.length === 0 ? null : (
        <ul className="joint-findings" aria-label="To look at where pieces are joined">
          {findings.map(({ code, message }) => (
            <li key={message} className={code === 'free-hole' ? 'hint' : 'caution'}>
              {toldWords(message)}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
