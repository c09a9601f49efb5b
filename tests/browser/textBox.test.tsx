import { useState } from 'react'
import { expect, test } from 'vitest'
import { page, userEvent } from 'vitest/browser'
import { TEXT_LIMITS } from '../../src/core/data/limits.ts'
import { TextBox } from '../../src/ui/aircraft/TextBox.tsx'
import { draw } from '../support/drawAircraft.tsx'

const taken: string[] = []

function Kept() {
  const [value, setValue] = useState('Camera')
  return (
    <TextBox
      label="Name"
      value={value}
      check={(text) => (text.includes('?') ? 'No questions.' : null)}
      onChange={(next) => {
        taken.push(next)
        setValue(next)
      }}
    />
  )
}

function drawBox() {
  taken.length = 0
  draw(<Kept />)
  return page.getByRole('textbox', { name: 'Name' })
}

test.each([
  ['x'.repeat(TEXT_LIMITS.name + 1), /^Up to 200 letters; this has 201/],
  ['  ', /^“Name” needs a few letters/],
  ['Which?', /^No questions/],
])(
  '“%s” is refused whole, stands as it was typed, and Escape brings the old text back',
  async (text, words) => {
    const box = drawBox()
    await box.fill(text)
    await userEvent.tab()
    await expect.element(page.getByRole('alert')).toHaveTextContent(words)
    await expect.element(box).toHaveValue(text)
    await expect.element(box).toHaveAttribute('aria-invalid', 'true')
    expect(taken).toEqual([])
    await userEvent.click(box)
    await userEvent.keyboard('{Escape}')
    await expect.element(box).toHaveValue('Camera')
    await expect.element(page.getByRole('alert')).not.toBeInTheDocument()
  },
)

test('the longest text is taken as it is', async () => {
  const box = drawBox()
  const text = 'x'.repeat(TEXT_LIMITS.name)
  await box.fill(text)
  await userEvent.tab()
  await expect.element(box).toHaveValue(text)
  expect(taken).toEqual([text])
})
