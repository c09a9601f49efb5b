import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import type { Page } from 'playwright'
import { afterEach, beforeEach, expect, inject, test } from 'vitest'
import { startKillableBrowser, type KillableBrowser } from '../support/killableBrowser.ts'
import { box } from '../support/meshes.ts'
import { chooseFromMenu, dropFiles, rowOf } from '../support/page.ts'
import { seededRandom } from '../support/random.ts'
import { brokenMeshes } from '../support/storedMeshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/*
 * Kills the tab (Chromium’s own Page.crash: the tab’s process ends on the spot) or, every fifth time, the whole browser
 * (SIGKILL to its process group) at a random moment of random edits, and looks at what the next visit opens.
 * `PREWEIGH_LONG=1` does it 200 times.
 */
const isLong = process.env['PREWEIGH_LONG'] === '1'
const KILLS = isLong ? 200 : 15
const SEED = 20_270_411
/** What may be lost, ms. */
const LOSS_MS = 1000
const MOST_PARTS = 6

/** What is seen of a frame; null for one without parts, which shows no name. */
interface Seen {
  readonly name: string
  readonly parts: readonly string[]
}

/**
 * A state the page was in, since when at the latest, and whether the page said that it is saved.
 */
interface Moment {
  readonly seen: Seen | null
  readonly at: number
  readonly saidSaved: boolean
}

const profile = mkdtempSync(path.join(tmpdir(), 'preweigh-durable-'))
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
  // Either the frame of the last visit or the page of a first one.
  await page.locator('tr.row, .empty h1').first().waitFor()
  return page
}

const nameField = (page: Page) => page.getByRole('textbox', { name: 'Name of the frame' })

async function look(page: Page): Promise<Seen | null> {
  const parts = await page.locator('tr.row .row-name').allInnerTexts()
  if (parts.length === 0) return null
  return { name: await nameField(page).inputValue(), parts: parts.map((each) => each.trim()) }
}

async function momentOf(page: Page, seen: Seen | null): Promise<Moment> {
  const saidSaved = (await page.getByText('Saved on this device').count()) > 0
  return { seen, saidSaved, at: Date.now() }
}

let count = 0

/** One random edit by hand; gives what the page then shows. */
async function edit(page: Page, now: Seen | null, random: () => number): Promise<Seen | null> {
  const what = random()
  count += 1
  if (now !== null && what < 0.55) {
    const name = `Frame ${count}`
    await nameField(page).fill(name)
    await nameField(page).press('Enter')
    return { ...now, name }
  }
  if (now !== null && now.parts.length >= MOST_PARTS) {
    await chooseFromMenu(page, 'New frame')
    await page.locator('.empty h1').waitFor()
    return null
  }
  const name = `part ${count}`
  const bytes = writeStlBinary(box(5 + (count % 50), 7, 1 + random()))
  await dropFiles(page, [{ name: `${name}.stl`, bytes }])
  await rowOf(page, name).waitFor()
  return { name: now?.name ?? 'New frame', parts: [...(now?.parts ?? []), name] }
}

test(
  `killed ${KILLS} times at random moments, nothing older than a second is lost and nothing opens broken`,
  { timeout: KILLS * 60_000 },
  async () => {
    const random = seededRandom(SEED)
    let page = await open()
    /** What the last visit may have left behind, oldest first. */
    let moments: readonly Moment[] = [{ seen: null, at: 0, saidSaved: true }]
    let lost = 0
    let edits = 0
    for (let kill = 1; kill <= KILLS; kill++) {
      const history: Moment[] = [await momentOf(page, moments.at(-1)?.seen ?? null)]
      const until = Date.now() + 1000 * random()
      do {
        const seen = await edit(page, history.at(-1)?.seen ?? null, random)
        history.push(await momentOf(page, seen))
        edits += 1
      } while (Date.now() < until)
      await wait(1300 * random() ** 2)
      history.push(await momentOf(page, history.at(-1)?.seen ?? null))

      const killedAt = Date.now()
      if (kill % 5 === 0) {
        await browser.killAll()
        browser = await startKillableBrowser(profile)
      } else await browser.killTab(page)
      page = await open()

      const found = await look(page)
      const oldest = history.findLastIndex(
        ({ at, saidSaved }, index) => saidSaved || index === 0 || at <= killedAt - LOSS_MS,
      )
      const allowed = history.slice(oldest).map((each) => each.seen)
      expect(allowed, `kill ${kill} of seed ${SEED}`).toContainEqual(found)
      expect(await brokenMeshes(page)).toEqual([])
      expect(await page.getByRole('region', { name: 'Files left out' }).count()).toBe(0)
      expect(await page.locator('.elsewhere').count()).toBe(0)
      lost += JSON.stringify(found) === JSON.stringify(history.at(-1)?.seen) ? 0 : 1
      moments = [{ seen: found, at: 0, saidSaved: true }]
      if (kill % 25 === 0) process.stdout.write(`${kill} kills, ${edits} edits so far\n`)
    }
    process.stdout.write(
      `${KILLS} kills, ${edits} edits; ${lost} times the edit of the last moment was lost\n`,
    )
    await browser.killTab(page)
  },
)
