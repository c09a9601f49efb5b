import '../styles/frameSigns.css'
import { memo } from 'react'
import type { FrameSign } from '../../core/aircraft/report/frameSigns.ts'
import { toldWords } from '../../core/words/toldWords.ts'
import { RunInSign } from './RunInSign.tsx'

interface SignListProps {
  readonly signs: readonly FrameSign[]
}

/** The same in words: a sentence for each sign on the drawing. */
export const SignList = memo(function SignList({ signs }: SignListProps) {
  if (signs.length === 0) return null
  return (
    <ul className="sign-list" aria-label="What runs into what">
      {signs.map((sign, place) => (
        <li
          key={sign.message}
          id={signId(place)}
          tabIndex={-1}
          className={sign.isFault ? 'frame-fault caution' : 'hint'}
        >
          <svg width="22" height="14" viewBox="-11 -7 22 14" aria-hidden="true">
            <RunInSign x={0} y={0} />
          </svg>
          <span>{toldWords(sign.message)}</span>
        </li>
      ))}
    </ul>
  )
})

/** @param place in the list of signs. */
export function signId(place: number): string {
  return `frame-sign-${place}`
}
