import type { Locator } from 'playwright'

/** A number that was typed into a box, with what became of it. */
export interface Typed {
  readonly label: string
  readonly typed: string
  /** What the box said of itself, besides the number in it. */
  readonly said: string
  readonly shown: string
}

/** What stands in every box of a place, as "label: number". */
export async function valuesIn(place: Locator): Promise<readonly string[]> {
  return place.locator('.number-box input').evaluateAll((inputs) =>
    (inputs as HTMLInputElement[]).map(({ ariaLabel, labels, value }) => {
      return `${ariaLabel ?? labels?.[0]?.textContent ?? ''}: ${value}`
    }),
  )
}

/**
 * Types a number into every box of a place with one decimal mark and another with the other, leaves
 * the box each time, and tells all that was typed. Boxes that come or go meanwhile are gone through
 * as they then are. In the page, since two hundred boxes would take minutes key by key;
 * `app/locales` types one by keys.
 *
 * @throws Error when a box without a fraction takes one, or one says nothing of what it takes.
 */
export async function typeIntoAll(place: Locator): Promise<readonly Typed[]> {
  return place.evaluate(typeAll)
}

/** Runs in the page, so it may use nothing outside of itself. */
export async function typeAll(place: Element): Promise<readonly Typed[]> {
  /** Fit for some box each, and none with more digits than any box shows. */
  const BROKEN = [0.25, 0.5, 1.5, 2.5, 3.5, 4.5, 12.5, 33.5, 212.5, 1000.5, 1500.5]
  const WHOLE = [0, 1, 2, 3, 4, 12, 36]
  const numberIn = (text = '') =>
    Number(text.replace('−', '-').replace(',', '.').replace(/\s/g, ''))
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0))
  const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
  const leave = async (input: HTMLInputElement, text: string) => {
    input.focus()
    setter?.call(input, text)
    input.dispatchEvent(new InputEvent('input', { bubbles: true }))
    input.blur()
    await settled()
  }
  const back = async (input: HTMLInputElement) => {
    input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }))
    await settled()
  }

  const all: Typed[] = []
  for (let at = 0; ; at++) {
    const field = place.querySelectorAll('.number-box')[at]
    const input = field?.querySelector('input')
    if (field === undefined || input === null || input === undefined) return all
    const label = input.ariaLabel ?? input.labels?.[0]?.textContent ?? ''
    await leave(input, 'words')
    const takes = field.querySelector('.wrong-text')?.textContent ?? ''
    await back(input)
    const span = /Takes ([-−\d.,\s]+?)(?: to ([-−\d.,\s]*\d)|.* or more)/.exec(takes)
    if (span === null) throw new Error(`${label} says of words: “${takes}”`)
    const [min, max] = [numberIn(span[1]), span[2] === undefined ? Infinity : numberIn(span[2])]
    const isWhole = input.inputMode === 'numeric'
    // Near to what holds, so that the frame stays one that flies and has all of its boxes.
    const held = input.value === '' ? 2 : numberIn(input.value)
    const fitting = (isWhole ? WHOLE : BROKEN)
      .filter((value) => value >= min && value <= max && value !== held)
      .toSorted((a, b) => Math.abs(a - held) - Math.abs(b - held))
    for (const [i, mark] of ['.', ','].entries()) {
      const typed = String(fitting[i % Math.min(2, fitting.length)]).replace('.', mark)
      await leave(input, typed)
      const said = field.querySelector('.hint')?.textContent ?? ''
      all.push({ label, typed, said, shown: input.value })
    }
    for (const typed of isWhole ? ['1.5', '1,5'] : []) {
      await leave(input, typed)
      if (input.ariaInvalid !== 'true') throw new Error(`${label} made ${input.value} of ${typed}`)
      await back(input)
    }
  }
}
