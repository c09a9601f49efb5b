import { expect, test } from 'vitest'
import { withApp } from '../support/app.ts'

test('text put into the page neither runs nor styles it, header or not', async () => {
  await withApp(
    async ({ page, url }) => {
      // A host that sends no headers: only what the page says about itself is left.
      await page.route(url, async (route) => {
        const response = await route.fetch()
        await route.fulfill({ response, headers: { 'content-type': 'text/html; charset=utf-8' } })
      })
      await page.reload()
      await page.getByRole('heading', { level: 1 }).waitFor()

      const injected = await page.evaluate(() => {
        const script = document.createElement('script')
        script.textContent = 'document.title = "taken over"'
        const style = document.createElement('style')
        style.textContent = 'body { opacity: 0 }'
        document.head.append(script, style)
        return { title: document.title, opacity: getComputedStyle(document.body).opacity }
      })
      expect(injected).toEqual({ title: expect.stringContaining('Preweigh'), opacity: '1' })
      expect(await page.title()).not.toBe('taken over')
    },
    { expectedErrors: /Content Security Policy/ },
  )
})
