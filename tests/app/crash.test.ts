import type { Page } from 'playwright'
import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { demoFile, dropFiles, rowOf, waitForCensus } from '../support/page.ts'

const LOCALE = {
  locale: 'en-GB',
  viewport: { width: 1280, height: 900 },
  // Chromium reports what broke inside a worker; the page handles it.
  expectedErrors: /out of memory/,
}

/**
 * Makes workers of the built app really break while they work on files of that name, as often as told. Their script
 * is changed on its way from the server; nothing of this is in the app.
 */
async function breakWorkers(page: Page, fileName: string, times: number): Promise<() => number> {
  let broken = 0
  await page.context().route('**/assets/analyse.worker-*.js', async (route) => {
    const answer = await route.fetch()
    const trap = `
      addEventListener('message', (event) => {
        const { ask } = event.data
        if (ask.kind !== 'analyse' || ask.source.name !== ${JSON.stringify(fileName)}) return
        event.stopImmediatePropagation()
        throw new Error('out of memory')
      })
      `
    broken += 1
    const body = (broken <= times ? trap : '') + (await answer.text())
    await route.fulfill({ response: answer, body })
  })
  await page.reload()
  return () => broken
}

test('a worker that breaks is replaced and its part counted in another', async () => {
  await withApp(async ({ page }) => {
    const told: string[] = []
    page.context().on('weberror', (error) => told.push(String(error.error())))
    page.on('console', (message) => told.push(message.text()))
    const started = await breakWorkers(page, 'damper-cup.stl', 1)
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await waitForCensus(page)
    // It did break, and another took over; one more may be drawing the frame meanwhile.
    expect(told.join()).toContain('out of memory')
    expect(started()).toBeGreaterThanOrEqual(2)
    expect(await rowOf(page, 'damper cup').locator('.cell-grams .figure').innerText()).toMatch(/\d/)
    expect(await rowOf(page, 'damper cup').innerText()).not.toContain('out of memory')
  }, LOCALE)
}, 120_000)

test('a part that breaks its worker twice fails with the reason; the others are counted', async () => {
  await withApp(async ({ page }) => {
    await breakWorkers(page, 'damper-cup.stl', Infinity)
    await dropFiles(page, ['damper-cup.stl', 'gps-mast.stl'].map(demoFile))
    await page.locator('tr.row').nth(1).waitFor()
    await page.locator('tr.row', { hasText: 'damper cup' }).getByText('out of memory').waitFor()
    await waitForCensus(page)
    expect(await rowOf(page, 'gps mast').locator('.cell-grams .figure').innerText()).toMatch(/\d/)
  }, LOCALE)
}, 120_000)
