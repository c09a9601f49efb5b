import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { Locator, Page } from 'playwright'

/** A file to drop: its name and its bytes. */
export interface DroppedFile {
  readonly name: string
  readonly bytes: Uint8Array
}

const DEMO_FOLDER = path.join('public', 'demo')

export function demoFile(name: string): DroppedFile {
  return { name, bytes: readFileSync(path.join(DEMO_FOLDER, name)) }
}

export function textFile(name: string, text: string): DroppedFile {
  return { name, bytes: new TextEncoder().encode(text) }
}

/** Drags files over the window and lets go, as a hand would. */
export async function dropFiles(
  page: Page,
  files: readonly DroppedFile[],
  onto = 'body',
): Promise<void> {
  const packed = files.map(({ name, bytes }) => ({
    name,
    base64: Buffer.from(bytes).toString('base64'),
  }))
  await page.evaluate(
    ([list, place]) => {
      const transfer = new DataTransfer()
      for (const { name, base64 } of list) {
        const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0))
        transfer.items.add(new File([bytes], name))
      }
      for (const kind of ['dragenter', 'dragover', 'drop']) {
        const event = new DragEvent(kind, {
          dataTransfer: transfer,
          cancelable: true,
          bubbles: true,
        })
        document.querySelector(place)?.dispatchEvent(event)
      }
    },
    [packed, onto] as const,
  )
}

/** The ledger's row of a part. */
export function rowOf(page: Page, name: string): Locator {
  const words = page.locator('.row-name', { hasText: new RegExp(String.raw`^\s*${name}\s*$`) })
  return page.locator('tr.row', { has: words })
}

/** A row's grams as a number. */
export async function gramsOf(page: Page, name: string): Promise<number> {
  return numberIn(rowOf(page, name).locator('.cell-grams .figure'))
}

/** The frame's grams in the head as a number. */
export async function totalGrams(page: Page): Promise<number> {
  return numberIn(page.locator('.total-grams .total-figure'))
}

async function numberIn(place: Locator): Promise<number> {
  return Number((await place.innerText()).replaceAll(/[^\d.]/g, ''))
}

/** Opens the form of the frame's printer. */
export async function openPrinter(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Printer: / }).click()
  await page.getByRole('dialog', { name: 'Printer' }).waitFor()
}

/** Waits until every part's layers are counted: no row says any more that it is being worked on. */
export async function waitForCensus(page: Page): Promise<void> {
  await page.locator('tr.row').first().waitFor()
  await page.locator('.row-working').first().waitFor({ state: 'detached', timeout: 60_000 })
  // A part of the frame whose row is not drawn yet counts too.
  await page.locator('.rough-words').waitFor({ state: 'detached', timeout: 60_000 })
}

export async function openRow(page: Page, name: string): Promise<Locator> {
  await rowOf(page, name).locator('.row-open-button').click()
  const panel = page.getByRole('group', { name: `Settings of ${name}` })
  await panel.waitFor()
  return panel
}

/** Presses an entry of the menu behind “More”. */
export async function chooseFromMenu(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: 'More' }).click()
  await page.getByRole('menuitem', { name }).click()
}
