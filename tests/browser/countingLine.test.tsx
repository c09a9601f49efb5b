import { useState } from 'react'
import { expect, test } from 'vitest'
import { page } from 'vitest/browser'
import type { PartWork } from '../../src/state/store/types.ts'
import { CountingLine } from '../../src/ui/part/CountingLine.tsx'
import { draw } from '../support/drawAircraft.tsx'

const ROUGH = { volumeMm3: 1000, areaMm2: 600 }

const roughAt = (fraction: number): PartWork => ({
  kind: 'rough',
  rough: ROUGH,
  read: null,
  coarse: null,
  fraction,
})

function Counted() {
  const [fraction, setFraction] = useState(0.2)
  return (
    <>
      <CountingLine work={roughAt(fraction)} />
      <button
        onClick={() => {
          setFraction(0.7)
        }}
      >
        on
      </button>
    </>
  )
}

test('a count is spoken of once, however far it is', async () => {
  draw(<Counted />)
  const status = page.getByRole('status')
  await expect.element(status).toHaveTextContent('Rough figures: its layers are being counted.')
  await expect.element(page.getByText('20 %')).toBeVisible()
  const before = status.element().textContent
  await page.getByRole('button', { name: 'on' }).click()
  await expect.element(page.getByText('70 %')).toBeVisible()
  // The percentage is no part of what is spoken.
  expect(page.getByRole('status').element().textContent).toBe(before)
  expect(page.getByText('70 %').element().getAttribute('aria-hidden')).toBe('true')
})

test('nothing is said of a part that is counted, or that failed', async () => {
  const problem = { code: 'no-volume', message: 'm', advice: 'a' } as const
  draw(<CountingLine work={{ kind: 'failed', problem, read: null }} />)
  await expect.element(page.getByRole('status')).toHaveTextContent('')
})
