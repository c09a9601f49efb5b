// Takes a picture of every sheet from the running app, for the README.
import { mkdirSync } from 'node:fs'
import path from 'node:path'
import { chromium } from 'playwright'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'
import { build, DIST, isBuildStale, ROOT } from '../../src/tools/project.mjs'
import { createAppServer, listen } from '../../src/tools/serve.mjs'

/** File, address, width and colours; heights follow the sheet up to this many px. */
const PICTURES = [
  ['frame', '#/frame', 1440, 'light'],
  ['part', '#/part/2', 1440, 'light'],
  ['choose', '#/choose', 1440, 'light'],
  ['carbon', '#/carbon', 1440, 'light'],
  ['aircraft', '#/aircraft', 1440, 'light'],
  ['bench', '#/bench', 1440, 'light'],
  ['frame-dark', '#/frame', 1440, 'dark'],
  ['frame-phone', '#/frame', 390, 'light'],
] as const
const HEIGHT_PX = 900

if (isBuildStale() && !build()) process.exit(1)
const folder = path.join(ROOT, 'pictures')
mkdirSync(folder, { recursive: true })
const server = createAppServer(DIST)
const url = `http://127.0.0.1:${await listen(server, 0)}/`
const executablePath = findBrowser()
const browser = await chromium.launch({
  args: browserFlags(),
  ...(executablePath === undefined ? {} : { executablePath }),
})
for (const [name, address, width, colorScheme] of PICTURES) {
  const context = await browser.newContext({
    locale: 'en-GB',
    colorScheme,
    viewport: { width, height: HEIGHT_PX },
    serviceWorkers: 'block',
  })
  const page = await context.newPage()
  await page.goto(url)
  await page.getByRole('button', { name: /Load Sandpiper/ }).click()
  await page.locator('tr.row').first().waitFor()
  await page.locator('.rough-words').waitFor({ state: 'detached' })
  await page.evaluate((hash) => {
    location.hash = hash
  }, address)
  await page.locator('.drawn-sheet:not(.sheet-coming, .order-paper) .title-block').waitFor()
  if (name === 'bench')
    await page
      .getByText(/in \d+ print runs/)
      .first()
      .waitFor()
  // Drawings come from a worker; the picture waits until nothing on the sheet changes any more.
  await page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        let timer = setTimeout(resolve, 1500)
        new MutationObserver(() => {
          clearTimeout(timer)
          timer = setTimeout(resolve, 1500)
        }).observe(document.body, { subtree: true, childList: true, attributes: true })
      }),
  )
  await page.screenshot({ path: path.join(folder, `${name}.png`) })
  console.log(`pictures/${name}.png`)
  await context.close()
}
await browser.close()
server.close()
