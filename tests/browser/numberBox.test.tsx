import { useState } from 'react'
import { describe, expect, test } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { NumberBox } from '../../src/ui/fields/NumberBox.tsx'
import { draw, type } from '../support/drawAircraft.tsx'

const taken: number[] = []

/** A box that keeps what it is given, as the page does. */
function Kept({ start }: { readonly start: number }) {
  const [value, setValue] = useState(start)
  return (
    <>
      <NumberBox
        label="Capacity"
        value={value}
        min={1}
        max={5000}
        step={10}
        digits={1}
        unit="mAh"
        onChange={(next) => {
          taken.push(next)
          setValue(next)
        }}
      />
      <button>behind it</button>
    </>
  )
}

function drawBox(start: number) {
  taken.length = 0
  draw(<Kept start={start} />)
  return page.getByRole('textbox', { name: 'Capacity' })
}

describe('a number box', () => {
  test.each([
    ['99999999999999999999999999', '5000', /“Capacity” takes 1 to 5,000 mAh\. 5,000 was taken/],
    ['-40', '1', /“Capacity” takes 1 to 5,000 mAh\. 1 was taken/],
    ['0', '1', /“Capacity” takes 1 to 5,000 mAh/],
    ['', '2200', /“Capacity” needs a number, 1 to 5,000 mAh\. The old one is back/],
    ['abc', '2200', /“Capacity” takes numbers only, 1 to 5,000 mAh/],
  ])('takes “%s” as %s and says why', async (text, stands, words) => {
    const box = drawBox(2200)
    await userEvent.click(box)
    await userEvent.keyboard('{Control>}a{/Control}')
    await userEvent.keyboard(text === '' ? '{Delete}' : text)
    // Letters are refused as they are typed, and said then; the rest when the box is left.
    if (text !== 'abc') await userEvent.tab()
    await expect.element(page.getByRole('alert')).toHaveTextContent(words)
    await expect.element(box).toHaveValue(stands)
    for (const value of taken) expect(value).toBe(Number(stands))
  })

  test('says nothing more once a number that will do is typed', async () => {
    const box = drawBox(2200)
    await type(box, '9000')
    await expect.element(page.getByRole('alert')).toBeVisible()
    await type(box, '1800')
    await expect.element(page.getByRole('alert')).not.toBeInTheDocument()
    expect(taken).toEqual([5000, 1800])
  })

  test('takes a number between the steps of the arrow keys, which still step', async () => {
    const box = drawBox(2200)
    await type(box, '2203.5')
    await userEvent.click(box)
    await userEvent.keyboard('{ArrowUp}{PageDown}')
    expect(taken).toEqual([2203.5, 2213.5, 2113.5])
    await expect.element(box).toHaveValue('2113.5')
  })

  test('is left as it was by one who only passes through', async () => {
    const box = drawBox(2200.04)
    await expect.element(box).toHaveValue('2200')
    await userEvent.click(box)
    await userEvent.tab()
    expect(taken).toEqual([])
  })
})
