import { useEffect, useId, useRef, type KeyboardEvent } from 'react'
import type { Limits } from '../../core/data/limits.ts'
import { PlainButton } from './PlainButton.tsx'
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
  /** What the arrow keys add; ten times as much with the page keys. Any number between may be typed. */
  readonly step?: number
  /** Fraction digits shown at most. */
  readonly digits?: number
  /** Shown behind the number. */
  readonly unit?: string
  readonly hint?: string
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
 * A number with its unit, taken when the box is left or on Enter. `.` and `,` are the decimal mark in every language.
 * What will not do stays as it was typed, with the reason and what would; the number that held still holds, and Escape
 * brings it back.
 */
export function NumberBox(props: NumberBoxProps) {
  const {
    label,
    limits,
    value,
    onChange,
    onEmpty,
    step = 1,
    unit,
    hint,
    bare = false,
    usual = '–',
  } = props
  const digits = props.digits ?? (limits.whole ? 0 : 2)
  const bounds = unit === undefined ? limits : { ...limits, unit }
  const draft = useNumberDraft({ ...bounds, value, digits, onChange, onEmpty })
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
    draft.step(steps * step)
  }
  const told = [
    ...(refused === null ? [] : [`${id}-refused`]),
    ...(hint === undefined ? [] : [`${id}-hint`]),
  ]
  return (
    <div className="field number-box" data-refused={refused === null ? undefined : true}>
      {bare ? null : <label htmlFor={id}>{label}</label>}
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
