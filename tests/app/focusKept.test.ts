import { expect, test } from 'vitest'
import type { Page } from 'playwright'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const WIDE = { locale: 'en-GB', viewport: { width: 1280, height: 900 }, hasCounted: true }

const focused = (page: Page) => page.locator(':focus')

test('after the story of the sample is dismissed the focus is on the sheet', async () => {
  await withApp(async ({ page }) => {
    await page.getByRole('button', { name: /Load Sandpiper/ }).click()
    const dismiss = page.getByRole('button', { name: 'Dismiss the story of the sample' })
    await dismiss.focus()
    await page.keyboard.press('Enter')
    await dismiss.waitFor({ state: 'detached' })
    await page.locator('.frame-sheet h2:focus').waitFor()
    await expect.poll(() => focused(page).innerText()).toBe('Frame, assembled')
  }, WIDE)
})

test('after ticked rows are removed or unticked the focus is on the line in their place', async () => {
  await withApp(async ({ page }) => {
    const names = ['one', 'two', 'three', 'four']
    await dropFiles(
      page,
      names.map((name, i) => ({ name: `${name}.stl`, bytes: writeStlBinary(box(20 + i, 10, 4)) })),
    )
    await waitForCensus(page)
    const tick = async (name: string) => {
      await page.getByRole('checkbox', { name: `Tick ${name}` }).focus()
      await page.keyboard.press('Space')
    }
    const press = async (name: string) => {
      const bar = page.getByRole('toolbar', { name: 'Ticked parts' })
      await bar.getByRole('button', { name, exact: true }).focus()
      await page.keyboard.press('Enter')
    }
    await tick('two')
    await press('Untick all')
    await page.locator('.row-name:focus', { hasText: 'two' }).waitFor()

    await tick('two')
    await tick('three')
    await press('Remove')
    await page.locator('.row-name:focus', { hasText: 'four' }).waitFor()

    await tick('four')
    await press('Remove')
    await page.locator('.row-name:focus', { hasText: 'one' }).waitFor()

    // With the last part the sheet goes: the page begins anew, and so does the focus.
    await tick('one')
    await press('Remove')
    await page.locator('h1:focus').waitFor()
    await expect.poll(() => focused(page).innerText()).toMatch(/^Weigh a printed airframe/)
  }, WIDE)
})
