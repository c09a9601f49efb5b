import '../styles/frameSigns.css'
import { toldWords } from '../../core/words/toldWords.ts'
import type { PlacedSign } from './placeSigns.ts'
import { RunInSign } from './RunInSign.tsx'
import { signId } from './SignList.tsx'

interface FrameSignsProps {
  readonly signs: readonly PlacedSign[]
}

/** Two rings in each other at each place, with the volume beside the first. */
export function FrameSigns({ signs, isNarrow }: FrameSignsProps & { readonly isNarrow: boolean }) {
  return (
    <g aria-hidden="true">
      {signs.map(({ sign, spots, words }) => (
        <g key={sign.message} className={sign.isFault ? 'frame-sign frame-fault' : 'frame-sign'}>
          {spots.map(([x, y]) => (
            <RunInSign key={`${x} ${y}`} x={x} y={y} scale={isNarrow ? 0.7 : 1} />
          ))}
          <text x={words.x} y={words.y + 4} textAnchor={words.anchor}>
            {toldWords(sign.label)}
          </text>
        </g>
      ))}
    </g>
  )
}

/** What is pressed at them: it leads to what is said of it. */
export function FrameSignButtons({ signs }: FrameSignsProps) {
  return signs.map(({ sign, place, spots: [spot] }) =>
    spot === undefined ? null : (
      <button
        key={sign.message}
        type="button"
        className="frame-sign-button"
        style={{ left: `${spot[0]}px`, top: `${spot[1]}px` }}
        title={toldWords(sign.message)}
        aria-label={toldWords(sign.message)}
        onClick={() => {
          document.querySelector<HTMLElement>(`#${signId(place)}`)?.focus()
        }}
      />
    ),
  )
}
