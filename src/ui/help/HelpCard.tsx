import { useLayoutEffect, useRef, useState, type RefObject } from 'react'
import { createPortal } from 'react-dom'
import '../styles/help.css'
import { HelpPicture } from './HelpPicture.tsx'
import { HELP_WORDS, type HelpWord } from './helpWords.ts'

interface HelpCardProps {
  readonly id: string
  readonly of: HelpWord
  readonly mark: RefObject<HTMLButtonElement | null>
  readonly onClose: () => void
}

/** Of a card, px. */
const WIDTH = 320
const EDGE = 8

/**
 * What a word means. It lies on the page beside its mark, also where that stands still in the head,
 * and stays open; Escape, a press elsewhere or on the mark puts it away. Inside a dialog it belongs
 * to the dialog.
 */
export function HelpCard({ id, of, mark, onClose }: HelpCardProps) {
  const card = useRef<HTMLDivElement>(null)
  const [place] = useState(() => placeFor(mark.current))
  const { words, source } = HELP_WORDS[of]

  useLayoutEffect(() => {
    const shown = card.current
    const from = mark.current
    if (shown === null || from === null) return
    const put = () => {
      const at = from.getBoundingClientRect()
      const wide = Math.min(WIDTH, document.documentElement.clientWidth - 2 * EDGE)
      shown.style.width = `${wide}px`
      const most = document.documentElement.clientWidth - wide - EDGE
      const high = shown.offsetHeight
      const fitsBelow = at.bottom + EDGE + high <= window.innerHeight || at.top < high + EDGE
      const left = Math.max(EDGE, Math.min(at.left, most))
      const top = fitsBelow ? at.bottom + EDGE / 2 : at.top - high - EDGE / 2
      const [groundLeft, groundTop] = cornerOf(shown)
      shown.style.left = `${left - groundLeft}px`
      shown.style.top = `${top - groundTop}px`
    }
    put()
    shown.focus({ preventScroll: true })
    window.addEventListener('resize', put)
    // A mark in the head stays where it is while the page goes on below it.
    window.addEventListener('scroll', put, { capture: true, passive: true })

    const leave = (event: Event) => {
      const { target } = event
      if (target instanceof Node && (shown.contains(target) || from.contains(target))) return
      onClose()
    }
    const press = (event: KeyboardEvent) => {
      if (event.key !== 'Escape') return
      // A dialog behind it stays open.
      event.stopPropagation()
      event.preventDefault()
      from.focus({ preventScroll: true })
      onClose()
    }
    document.addEventListener('pointerdown', leave, true)
    document.addEventListener('focusin', leave, true)
    document.addEventListener('keydown', press, true)
    return () => {
      window.removeEventListener('resize', put)
      window.removeEventListener('scroll', put, { capture: true })
      document.removeEventListener('pointerdown', leave, true)
      document.removeEventListener('focusin', leave, true)
      document.removeEventListener('keydown', press, true)
    }
  }, [mark, onClose])

  return createPortal(
    <div
      ref={card}
      id={id}
      className="help-card"
      role="note"
      aria-label={`What is meant by ${of}`}
      tabIndex={-1}
    >
      <HelpPicture of={of} />
      <p>
        <b>{of}</b>: {words}
      </p>
      <p className="help-source">{source}</p>
    </div>,
    place,
  )
}

/**
 * Of what an element laid out by itself is counted from, in the window: the page, or a dialog as
 * far as it is scrolled.
 */
function cornerOf(card: HTMLElement): readonly [number, number] {
  const { offsetParent } = card
  if (offsetParent === null || offsetParent === document.body) return [-scrollX, -scrollY]
  const { left, top } = offsetParent.getBoundingClientRect()
  return [left - offsetParent.scrollLeft, top - offsetParent.scrollTop]
}

/**
 * Escape and focus are a dialog's own while it is open; else the card is part of the page's
 * content.
 */
function placeFor(mark: HTMLElement | null): Element {
  const dialog = mark?.closest('[role="dialog"]') ?? null
  return dialog ?? document.querySelector('main') ?? document.body
}
