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
 * Makes workers of the built app really break while they work on files of that name, as often as
 * told. Their script is changed on its way from the server; nothing of this is in the app.
 */
async function breakWorkers(page: Page, fileName: string, times: number): Promise<() => number> {
  let broken = 0
  const context = page.context()
  // A worker says that it is about to break and asks whether it may: others draw the frame
  // meanwhile.
  await context.route('**/may-break', async (route) => {
    const may = broken < times
    if (may) broken += 1
    await route.fulfill({ body: may ? 'yes' : 'no' })
  })
  await context.route('**/assets/analyse.worker-*.js', async (route) => {
    const answer = await route.fetch()
    const trap = `
      addEventListener('message', (event) => {
        const { ask } = event.data
        if (ask.kind !== 'analyse' || ask.source.name !== ${JSON.stringify(fileName)}) return
        const question = new XMLHttpRequest()
        question.open('GET', 'may-break', false)
        question.send()
        if (question.responseText !== 'yes') return
        event.stopImmediatePropagation()
        throw new Error('out of memory')
      })
      `
    await route.fulfill({ response: answer, body: trap + (await answer.text()) })
  })
  await page.reload()
  return () => broken
}

test('a worker that breaks is replaced and its part counted in another', async () => {
  await withApp(async ({ page }) => {
    const broken = await breakWorkers(page, 'damper-cup.stl', 1)
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await waitForCensus(page)
    expect(broken()).toBe(1)
    await expect
      .poll(() => rowOf(page, 'damper cup').locator('.cell-grams .figure').innerText())
      .toMatch(/\d/)
    await expect.poll(() => rowOf(page, 'damper cup').innerText()).not.toContain('out of memory')
  }, LOCALE)
}, 300_000)

test('a part that breaks its worker twice fails with the reason; the others are counted', async () => {
  await withApp(async ({ page }) => {
    await breakWorkers(page, 'damper-cup.stl', Infinity)
    await dropFiles(page, ['damper-cup.stl', 'gps-mast.stl'].map(demoFile))
    await page.locator('tr.row').nth(1).waitFor()
    await page.locator('tr.row', { hasText: 'damper cup' }).getByText('out of memory').waitFor()
    await waitForCensus(page)
    await expect
      .poll(() => rowOf(page, 'gps mast').locator('.cell-grams .figure').innerText())
      .toMatch(/\d/)
  }, LOCALE)
}, 300_000)
