import { useState } from 'react'
import { afterEach, describe, expect, test } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { FLIGHT_LIMITS, HARDWARE_LIMITS, narrowed } from '../../src/core/data/limits.ts'
import { METRIC, showUnits } from '../../src/core/words/shownUnits.ts'
import { NumberBox } from '../../src/ui/fields/NumberBox.tsx'
import '../../src/ui/styles/fields.css'
import { draw, type } from '../support/drawAircraft.tsx'

const taken: number[] = []
let sent = 0

/** A box that keeps what it is given, in a form as the page has them. */
function Kept({ start }: { readonly start: number }) {
  const [value, setValue] = useState(start)
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        sent += 1
      }}
    >
      <NumberBox
        label="Capacity"
        value={value}
        limits={narrowed(FLIGHT_LIMITS.packMah, { max: 5000 })}
        step={10}
        digits={1}
        unit="mAh"
        hint="Of the whole pack."
        onChange={(next) => {
          taken.push(next)
          setValue(next)
        }}
      />
      <button>keep</button>
    </form>
  )
}

function drawBox(start: number) {
  taken.length = 0
  sent = 0
  draw(<Kept start={start} />)
  return page.getByRole('textbox', { name: 'Capacity' })
}

describe('a number box', () => {
  test.each([
    ['99999999999999999999999999', /^Takes 1 to 5000\smAh\./],
    ['-40', /^Takes 1 to 5000\smAh\./],
    ['0', /^Takes 1 to 5000\smAh\./],
    ['', /^Needs a number\. Takes 1 to 5000\smAh\./],
    ['abc', /^This is not a number\. Takes 1 to 5000\smAh/],
    ['1800 mAh', /^This is not a number\./],
    ['1.8.0', /^This is not a number\./],
  ])('refuses “%s” whole, leaves it standing and says why', async (text, words) => {
    const box = drawBox(2200)
    await type(box, text)
    await expect.element(page.getByRole('alert')).toHaveTextContent(words)
    await expect.element(box).toHaveValue(text)
    await expect.element(box).toHaveAttribute('aria-invalid', 'true')
    await expect.element(box).toHaveAccessibleDescription(words)
    await userEvent.click(page.getByRole('button', { name: 'keep' }))
    expect({ taken, sent }).toEqual({ taken: [], sent: 0 })
    await userEvent.click(box)
    await userEvent.keyboard('{Escape}')
    await expect.element(box).toHaveValue('2200')
    await expect.element(page.getByRole('alert')).not.toBeInTheDocument()
    await userEvent.keyboard('{Enter}')
    expect({ taken, sent }).toEqual({ taken: [], sent: 1 })
  })

  test('says nothing more once a number that will do is typed', async () => {
    const box = drawBox(2200)
    await type(box, '9000')
    await expect.element(page.getByRole('alert')).toBeVisible()
    await type(box, '1800')
    await expect.element(page.getByRole('alert')).not.toBeInTheDocument()
    await expect.element(box).toHaveAccessibleDescription('Of the whole pack.')
    expect(taken).toEqual([1800])
  })

  test('takes a number between the steps of the arrow keys, which still step', async () => {
    const box = drawBox(2200)
    await type(box, '2203,5')
    await userEvent.click(box)
    await userEvent.keyboard('{ArrowUp}{PageDown}')
    expect(taken).toEqual([2203.5, 2213.5, 2113.5])
    await expect.element(box).toHaveValue('2113.5')
  })

  test('shows what was typed as finely as it was typed', async () => {
    const box = drawBox(2200)
    await type(box, '2203.125')
    await expect.element(box).toHaveValue('2203.125')
    expect(taken).toEqual([2203.125])
  })

  test('is left as it was by one who only passes through', async () => {
    // Worked out: nobody typed it, and so it is shown rounded.
    const box = drawBox(2200 + 1 / 30)
    await expect.element(box).toHaveValue('2200')
    await userEvent.click(box)
    await userEvent.tab()
    expect(taken).toEqual([])
  })
})

describe('a refused number is brought back', () => {
  test.each([
    [1024, true],
    [390, false],
  ])('at %i px, with words about Escape: %s', async (width, hasKeys) => {
    await page.viewport(width, 800)
    const box = drawBox(2200)
    await type(box, '9000')
    const words = page.getByText('Esc brings the old number back.')
    const button = page.getByRole('button', { name: 'Bring the old number back' })
    if (hasKeys) {
      await expect.element(words).toBeVisible()
      await expect.element(button).not.toBeInTheDocument()
    } else {
      await expect.element(words).not.toBeVisible()
      await userEvent.click(button)
      await expect.element(box).toHaveValue('2200')
      await expect.element(page.getByRole('alert')).not.toBeInTheDocument()
    }
    expect(taken).toEqual([])
  })
})

/** One field of lengths or masses, kept in mm or g. */
function Measured({ unit, start }: { readonly unit: string; readonly start: number }) {
  const [value, setValue] = useState(start)
  return (
    <NumberBox
      label="Measure"
      value={value}
      limits={HARDWARE_LIMITS.outerMm}
      digits={2}
      unit={unit}
      onChange={(next) => {
        taken.push(next)
        setValue(next)
      }}
    />
  )
}

// 1 in = 25.4 mm, 1 oz = 28.349523125 g: NIST SP 811 (2008), B.8, and NIST Handbook 44, appendix C.
describe('a number box in inches and ounces', () => {
  afterEach(() => {
    showUnits(METRIC)
  })

  test.each([
    ['mm', 'in', '25.4', '1', '0.75', 19.05, '0.003938 to 39.37 in'],
    ['g', 'oz', '28.349523125', '1', '2', 56.69904625, '0.003528 to 35.2739 oz'],
  ])('keeps %s and shows %s', async (unit, label, kept, shown, typed, wanted, limits) => {
    taken.length = 0
    showUnits({ length: 'in', mass: 'oz' })
    draw(<Measured unit={unit} start={Number(kept)} />)
    const box = page.getByRole('textbox', { name: 'Measure' })
    await expect.element(box).toHaveValue(shown)
    await expect.element(page.getByText(label, { exact: true })).toBeVisible()
    await type(box, typed)
    expect(taken).toEqual([wanted])
    await expect.element(box).toHaveValue(typed)
    await type(box, '5000')
    await expect.element(page.getByRole('alert')).toHaveTextContent(`Takes ${limits}`)
    expect(taken).toEqual([wanted])
  })
})
