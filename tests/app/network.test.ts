import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { describe, expect, inject, test } from 'vitest'
import { withApp } from '../support/app.ts'
import {
  chooseFromMenu,
  demoFile,
  dropFiles,
  goToSheet,
  openRow,
  rowOf,
  textFile,
  waitForCensus,
} from '../support/page.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

/**
 * All that may be asked for once the page is loaded, besides the demo: the chunks, sheets of style
 * and typefaces of this very build, without those that the page itself names and so has already.
 */
const LAZY = lazyFiles(inject('appFolder'))

function lazyFiles(folder: string): ReadonlySet<string> {
  const page = readFileSync(join(folder, 'index.html'), 'utf8')
  const built = readdirSync(join(folder, 'assets')).map((name) => `assets/${name}`)
  const late = built.filter((name) => /\.(js|css|woff2)$/.test(name) && !page.includes(name))
  return new Set(late.map(withoutHash))
}

function withoutHash(name: string): string {
  return name.replace(/-[\w-]{8}\./, '-#.')
}

/**
 * Paths of what is asked for from now on, the page’s own origin left off. Left out: blob: and
 * data:, which never leave the page, and its icon, which the browser fetches when it likes.
 */
function record(page: Page, url: string): { readonly paths: string[]; take(): string[] } {
  const paths: string[] = []
  page.context().on('request', (request) => {
    const asked = request.url()
    if (/^(blob|data):/.test(asked) || asked === `${url}icon.svg`) return
    paths.push(asked.startsWith(url) ? asked.slice(url.length) : asked)
  })
  page.on('websocket', (socket) => paths.push(socket.url()))
  return { paths, take: () => paths.splice(0).map(withoutHash) }
}

test('once loaded the page asks the network for its own lazy chunks and the demo, and nothing else', async () => {
  await withApp(async ({ page, url }) => {
    await page.getByRole('heading', { level: 1 }).waitFor()
    const requests = record(page, url)

    await chooseFromMenu(page, /Tern/)
    await page.locator('tr.row').first().waitFor()
    const demo = requests.take()
    expect(demo).toContain('demo/tern.json')
    expect(demo.filter((path) => !path.startsWith('demo/') && !LAZY.has(path))).toEqual([])

    // Own files, edits and exports.
    await chooseFromMenu(page, 'New frame')
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await waitForCensus(page)
    const name = page.getByRole('textbox', { name: 'Name of the frame' })
    await name.fill('Quiet')
    await name.press('Enter')
    const saved: string[] = []
    for (const save of ['Save file', 'Save as CSV']) {
      const downloading = page.waitForEvent('download')
      if (save === 'Save file') await page.getByRole('button', { name: save }).click()
      else await chooseFromMenu(page, save)
      saved.push(await (await downloading).path())
    }
    await page.getByText('Saved on this device').waitFor()
    expect(requests.take().filter((path) => !LAZY.has(path))).toEqual([])

    // The frame just saved, opened from its file, with workers to count it.
    await chooseFromMenu(page, 'New frame')
    await page.getByRole('heading', { name: /Weigh a printed airframe/ }).waitFor()
    const [file] = saved
    await dropFiles(page, [{ name: 'Quiet.preweigh', bytes: readFileSync(file ?? '') }])
    await rowOf(page, 'damper cup').waitFor()
    await waitForCensus(page)
    expect(page.workers().length).toBeGreaterThan(0)
    expect(requests.take().filter((path) => !LAZY.has(path))).toEqual([])

    // The 3D view and the licences are loaded when first asked for, from the same place.
    await openRow(page, 'damper cup')
    await page.getByRole('button', { name: 'In 3D' }).click()
    await page.locator('.view3d, .part-view .thumbnail').first().waitFor()
    await chooseFromMenu(page, 'Licences')
    await page.getByText(/^three \d/).waitFor()
    const asked = requests.take()
    expect(asked.filter((path) => !LAZY.has(path))).toEqual([])
    expect(asked).toContain('assets/mountView-#.js')
    expect(asked).toContain('assets/LicenceList-#.js')
    await page
      .getByRole('dialog')
      .getByText(/^three \d/)
      .click()
    await expect
      .poll(() => page.getByRole('dialog').innerText())
      .toContain('Permission is hereby granted')
  }, LOCALE)
}, 300_000)

test('what a worker asks for would be seen', async () => {
  await withApp(async ({ page, url }) => {
    // As if something in the worker’s code called home: the record above has to show it.
    await page.context().route('**/assets/analyse.worker-*.js', async (route) => {
      const answer = await route.fetch()
      const body = `fetch(new URL('../icon.svg?home', location.href))\n${await answer.text()}`
      await route.fulfill({ response: answer, body })
    })
    await page.reload()
    await page.getByRole('heading', { level: 1 }).waitFor()
    const requests = record(page, url)
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await waitForCensus(page)
    expect(requests.take()).toContain('icon.svg?home')
  }, LOCALE)
}, 300_000)

describe('names and notes', { timeout: 300_000 }, () => {
  const EVIL =
    '<img src="x" onerror="document.title=\'taken\'"><script>document.title="taken"</script>'

  test('are shown as the text they are, and asked for nowhere', async () => {
    await withApp(async ({ page, url }) => {
      const requests = record(page, url)
      const { bytes } = demoFile('damper-cup.stl')
      // A slash cannot stand in a file's name.
      const fileName = `${EVIL.replaceAll('/', '')}.stl`
      await dropFiles(page, [{ name: fileName, bytes }, textFile(`${EVIL}.txt`, EVIL)])
      await waitForCensus(page)
      const frameName = page.getByRole('textbox', { name: 'Name of the frame' })
      await frameName.fill(EVIL)
      await frameName.press('Enter')
      await page.locator('.row-name').click()
      const panel = page.getByRole('group', { name: /Settings of/ })
      await panel.getByRole('button', { name: 'All settings' }).click()
      await panel.getByRole('textbox', { name: 'Name', exact: true }).fill(EVIL)
      await panel.getByRole('textbox', { name: 'Name', exact: true }).press('Enter')
      await panel.getByRole('textbox', { name: /Note/ }).fill(EVIL)
      await page.locator('.part-sheet h2', { hasText: EVIL }).waitFor()
      await goToSheet(page, 'frame')
      await page.locator('.row-name', { hasText: EVIL }).waitFor()
      await chooseFromMenu(page, 'Frames on this device')
      await page.getByRole('button', { name: `Open ${EVIL}` }).waitFor()

      expect(await page.locator('img[src="x"], script:not([src])').count()).toBe(0)
      expect(await page.title()).not.toBe('taken')
      expect(requests.paths.filter((path) => !path.startsWith('assets/'))).toEqual([])
    }, LOCALE)
  })

  test('do not run as formulas in a spreadsheet', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [{ name: '=1+1.stl', bytes: demoFile('damper-cup.stl').bytes }])
      await rowOf(page, '=1\\+1').waitFor()
      await waitForCensus(page)
      const downloading = page.waitForEvent('download')
      await chooseFromMenu(page, 'Save as CSV')
      const download = await downloading
      expect(download.suggestedFilename()).toBe('New-frame.csv')
      const lines = readFileSync(await download.path(), 'utf8').split('\r\n')
      expect(lines[1]).toMatch(/^"'=1\+1","'=1\+1\.stl",1,0,0,/)
      expect(lines).toHaveLength(4)
    }, LOCALE)
  })
})
