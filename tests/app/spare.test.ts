import { appendFileSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Page } from 'playwright'
import { afterEach, beforeEach, expect, inject, test } from 'vitest'
import { startKillableBrowser, type KillableBrowser } from '../support/killableBrowser.ts'
import { box } from '../support/meshes.ts'
import { dropFiles, rowOf, waitForCensus } from '../support/page.ts'
import { brokenMeshes } from '../support/storedMeshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

const profile = mkdtempSync(path.join(tmpdir(), 'preweigh-spare-'))
let browser: KillableBrowser
beforeEach(async () => {
  browser = await startKillableBrowser(profile)
})
afterEach(async () => {
  await browser.killAll()
  rmSync(profile, { recursive: true, force: true })
})

async function open(): Promise<Page> {
  const page = await browser.newPage()
  await page.goto(inject('appUrl'))
  await page.locator('tr.row, .empty h1').first().waitFor()
  return page
}

/**
 * What a write torn by the death of the browser leaves: the head of a record of the database’s log,
 * without it.
 */
function tearDatabase(): void {
  const places = path.join(profile, 'Default', 'IndexedDB')
  const folder = readdirSync(places).find((name) => name.endsWith('.leveldb'))
  if (folder === undefined) expect.fail('This browser keeps its databases elsewhere.')
  const log = readdirSync(path.join(places, folder)).find((name) => name.endsWith('.log'))
  if (log === undefined) expect.fail('The database has no log.')
  appendFileSync(path.join(places, folder, log), Uint8Array.of(1, 2, 3, 4, 200, 3, 1))
}

test(
  'a frame survives that the browser throws its database away',
  { timeout: 240_000 },
  async () => {
    let page = await open()
    await dropFiles(page, [{ name: 'a.stl', bytes: writeStlBinary(box(5, 6, 1)) }])
    await rowOf(page, 'a').waitFor()
    await page.getByText('Saved on this device').waitFor()
    await browser.killAll()
    tearDatabase()

    // The torn record is not noticed now, but by the next start, behind whatever is written until
    // then.
    browser = await startKillableBrowser(profile)
    page = await open()
    const name = page.getByRole('textbox', { name: 'Name of the frame' })
    await name.fill('Later')
    await name.press('Enter')
    // Seen to be written, not to be being written, which may be over before anybody looks.
    await expect.poll(() => copiedNames(page)).toContain('Later')
    await page.getByText('Saved on this device').waitFor()
    await browser.killAll()

    browser = await startKillableBrowser(profile)
    page = await open()
    await page.getByText('The browser had lost what it kept').waitFor()
    await expect
      .poll(() => page.getByRole('textbox', { name: 'Name of the frame' }).inputValue())
      .toBe('Later')
    await waitForCensus(page)
    expect(await page.locator('.status-wrong').count()).toBe(0)
    expect(await brokenMeshes(page)).toEqual([])
  },
)

/** Names of the frames in the second copy, read past the app. */
function copiedNames(page: Page): Promise<string[]> {
  return page.evaluate(async () => {
    const root = await navigator.storage.getDirectory()
    const frames = await root.getDirectoryHandle('frames')
    const names: string[] = []
    for await (const file of frames.keys()) {
      const text = await (await (await frames.getFileHandle(file)).getFile()).text()
      names.push((JSON.parse(text) as { name: string }).name)
    }
    return names
  })
}
