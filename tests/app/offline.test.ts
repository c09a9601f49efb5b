import { expect, inject, test } from 'vitest'
import { createAppServer, listen } from '../../src/tools/serve.mjs'
import { withApp } from '../support/app.ts'

test('after one visit the app opens with the server gone', async () => {
  const server = createAppServer(inject('appFolder'))
  const url = `http://127.0.0.1:${await listen(server, 0)}/`
  await withApp(
    async ({ page }) => {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
      server.close()
      server.closeAllConnections()
      await expect(fetch(url)).rejects.toThrow('fetch failed')

      await page.reload()
      await page.getByRole('heading', { level: 1 }).waitFor()
      expect(await page.title()).toContain('Preweigh')
    },
    { url, serviceWorkers: 'allow', expectedErrors: /ERR_CONNECTION_REFUSED/ },
  )
})
