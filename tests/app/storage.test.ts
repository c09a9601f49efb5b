import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { demoFile, dropFiles, totalGrams, waitForCensus } from '../support/page.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

/** Ways in which a browser keeps nothing, and what the page says of each. */
const FAILURES = [
  {
    name: 'a browser that denies storage',
    said: 'as in a private window',
    script: () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('The operation is insecure.', 'SecurityError')
      }
    },
  },
  {
    name: 'a disk without room',
    said: 'no room left',
    script: () => {
      const put = IDBObjectStore.prototype.put
      IDBObjectStore.prototype.put = function (
        this: IDBObjectStore,
        ...args: [unknown, IDBValidKey?]
      ) {
        if (this.name === 'frames') throw new DOMException('full', 'QuotaExceededError')
        return put.apply(this, args)
      }
    },
  },
]

describe.each(FAILURES)('with $name', { timeout: 300_000 }, ({ said, script }) => {
  test('the page says so, works on and offers the file', async () => {
    await withApp(async ({ page }) => {
      await page.context().addInitScript(script)
      await page.reload()
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      const total = await totalGrams(page)
      expect(total).toBeGreaterThan(0)
      const line = page.locator('.storage-memory')
      await expect.poll(() => line.innerText()).toContain(said)

      const downloading = page.waitForEvent('download')
      await line.getByRole('button', { name: 'Save it as a file now' }).click()
      const file = readFileSync(await (await downloading).path())

      const other = await page.context().newPage()
      await other.goto(page.url())
      await dropFiles(other, [{ name: 'frame.preweigh', bytes: file }])
      await waitForCensus(other)
      await expect.poll(() => totalGrams(other)).toBe(total)
    }, LOCALE)
  })
})

test('a disk that is really full is told, and forgotten once there is room', async () => {
  await withApp(async ({ page, url }) => {
    const session = await page.context().newCDPSession(page)
    const { origin } = new URL(url)
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 1 })
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await waitForCensus(page)
    await page.locator('.storage-memory').waitFor()
    await expect.poll(() => page.locator('.storage-memory').innerText()).toContain('no room left')

    await session.send('Storage.overrideQuotaForOrigin', { origin })
    const name = page.getByRole('textbox', { name: 'Name of the frame' })
    await name.fill('With room')
    await name.press('Enter')
    await page.getByText('Saved on this device').waitFor()
    await page.reload()
    await waitForCensus(page)
    await expect.poll(() => name.inputValue()).toBe('With room')
  }, LOCALE)
})
