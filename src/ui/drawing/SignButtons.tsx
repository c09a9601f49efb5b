import type { PlacedMarks } from './placeMarks.ts'

interface SignButtonsProps {
  readonly of: PlacedMarks
  readonly widthPx: number
  readonly heightPx: number
  /** Goes to where it stands what to do about a mark. */
  readonly onGo: (sign: string) => void
}

/** What is pressed at the signs of what is odd: it leads to what can be done about it. */
export function SignButtons({ of, widthPx, heightPx, onGo }: SignButtonsProps) {
  return of.leaders.map(({ mark: { kind, sign, words }, number }) =>
    kind === 'finding' || kind === 'over' ? (
      <button
        key={sign}
        type="button"
        className="item-number"
        style={{ left: `${(100 * number.x) / widthPx}%`, top: `${(100 * number.y) / heightPx}%` }}
        title={words}
        aria-label={`${sign}: ${words}. What to do`}
        onClick={() => {
          onGo(sign)
        }}
      />
    ) : null,
  )
}
