import { useEffect, useId, useRef, type KeyboardEvent } from 'react'
import type { Limits } from '../../core/data/limits.ts'
import { PlainButton } from './PlainButton.tsx'
import { keptOf, shownAs, shownOf } from '../../core/words/shownUnits.ts'
import { FINEST } from './shownNumber.ts'
import { shownLimits, shownStep } from './shownLimits.ts'
import { HelpMark } from '../help/HelpMark.tsx'
import type { HelpWord } from '../help/helpWords.ts'
import { useNumberDraft } from './useNumberDraft.ts'

interface NumberBoxProps {
  readonly label: string
  /** What it takes; the same as actions, saved files and the command take. */
  readonly limits: Limits
  /** Null shows an empty box; only for a number that may be left out. */
  readonly value: number | null
  readonly onChange: (value: number) => void
  /** Shown grey in an empty box; a dash unless given. */
  readonly usual?: string
  /** Called when the box is emptied; without it an empty box is refused. */
  readonly onEmpty?: () => void
  /**
   * What the arrow keys add; ten times as much with the page keys. Any number between may be typed.
   */
  readonly step?: number
  /** Fraction digits shown at most. */
  readonly digits?: number
  /**
   * What limits, value and step are in. Shown behind the number, or the builder's own unit in its
   * place.
   */
  readonly unit?: string
  /** Part of a standard's name (M3 × 16): typed in `unit`, whatever the builder reads in. */
  readonly isName?: boolean
  readonly hint?: string
  /** The word in its label that wants telling. */
  readonly help?: HelpWord
  /** Keeps the label for screen readers only. */
  readonly bare?: boolean
}

const STEPS: Readonly<Record<string, number>> = {
  ArrowUp: 1,
  ArrowDown: -1,
  PageUp: 10,
  PageDown: -10,
}

/**
 * A number with its unit, taken when the box is left or on Enter. `.` and `,` are the decimal mark
 * in every language. What will not do stays as it was typed, with the reason and what would; the
 * number that held still holds, and Escape brings it back.
 */
export function NumberBox(props: NumberBoxProps) {
  const {
    label,
    limits,
    value,
    onChange,
    onEmpty,
    step = 1,
    hint,
    help,
    bare = false,
    usual = '–',
  } = props
  const as = props.unit === undefined || props.isName === true ? null : shownAs(props.unit)
  const unit = as?.label ?? props.unit
  const digits = (props.digits ?? (limits.whole ? 0 : 2)) + (as?.finer ?? 0)
  const bounds = {
    ...(as === null ? limits : shownLimits(limits, as)),
    ...(unit === undefined ? {} : { unit }),
  }
  const draft = useNumberDraft({
    ...bounds,
    value: value === null || as === null ? value : shownOf(value, as),
    digits,
    finest: as === null || as.per === 1 ? FINEST : digits,
    onChange: (typed) => {
      onChange(as === null ? typed : keptOf(typed, as))
    },
    onEmpty,
  })
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  const { refused } = draft
  // A form around it is not sent while something in it was refused.
  useEffect(() => {
    input.current?.setCustomValidity(refused ?? '')
  }, [refused])

  const press = (event: KeyboardEvent) => {
    if (event.key === 'Enter' && !draft.settle()) event.preventDefault()
    if (event.key === 'Escape' && draft.isTyped) {
      event.stopPropagation()
      event.preventDefault()
      draft.revert()
    }
    const steps = STEPS[event.key]
    if (steps === undefined || event.altKey || event.ctrlKey || event.metaKey) return
    event.preventDefault()
    event.stopPropagation()
    draft.step(steps * (as === null ? step : shownStep(step, as)))
  }
  const told = [
    ...(refused === null ? [] : [`${id}-refused`]),
    ...(hint === undefined ? [] : [`${id}-hint`]),
  ]
  return (
    <div className="field number-box" data-refused={refused === null ? undefined : true}>
      {bare ? null : help === undefined ? (
        <label htmlFor={id}>{label}</label>
      ) : (
        <span className="field-name">
          <label htmlFor={id}>{label}</label>
          <HelpMark of={help} />
        </span>
      )}
      <span className="number-line">
        <input
          ref={input}
          id={id}
          type="text"
          inputMode={negative(limits) ? 'text' : limits.whole ? 'numeric' : 'decimal'}
          autoComplete="off"
          spellCheck={false}
          value={draft.text}
          {...(bare ? { 'aria-label': unit === undefined ? label : `${label}, ${unit}` } : {})}
          {...(value === null ? { placeholder: usual } : {})}
          {...(told.length === 0 ? {} : { 'aria-describedby': told.join(' ') })}
          aria-invalid={refused === null ? undefined : true}
          onChange={(event) => {
            draft.type(event.target.value)
          }}
          onBlur={draft.settle}
          onKeyDown={press}
        />
        {unit === undefined ? null : (
          <span className="unit" aria-hidden={bare}>
            {unit}
          </span>
        )}
      </span>
      {hint === undefined ? null : (
        <span id={`${id}-hint`} className="hint">
          {hint}
        </span>
      )}
      {refused === null ? null : (
        <p id={`${id}-refused`} role="alert" className="field-note wrong-text">
          {refused}
          {value === null ? null : (
            <span className="for-keys"> Esc brings the old number back.</span>
          )}
        </p>
      )}
      {refused === null || value === null ? null : (
        <PlainButton className="quiet for-touch" onPress={draft.revert}>
          Bring the old number back
        </PlainButton>
      )}
    </div>
  )
}

/** The number pads of phones have no minus sign. */
function negative({ min }: Limits): boolean {
  return min === undefined || min < 0
}
