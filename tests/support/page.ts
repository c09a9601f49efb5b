import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { Locator, Page } from 'playwright'
import type { Mesh } from '../../src/core/model/mesh.ts'
import { writeStlBinary } from './writeMesh.ts'

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
  // A sheet may be on its way.
  await page.locator(onto).waitFor()
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

/** Drops a binary STL of each mesh, named as its key. */
export async function dropMeshes(
  page: Page,
  meshes: Readonly<Record<string, Mesh>>,
): Promise<void> {
  const files = Object.entries(meshes).map(([name, mesh]) => ({
    name: `${name}.stl`,
    bytes: writeStlBinary(mesh),
  }))
  await dropFiles(page, files)
}

/** The sheets that the page is divided into, by their addresses. */
export type SheetName = 'frame' | 'part' | 'choose' | 'carbon' | 'aircraft' | 'bench'

/** Where each section stands. */
const SECTION_SHEETS = {
  'Bolts and bought items': 'aircraft',
  Mass: 'aircraft',
  Balance: 'aircraft',
  Flight: 'aircraft',
  'Carbon twin': 'carbon',
  'Against a carbon frame': 'carbon',
  'Weigh-in': 'bench',
  Clock: 'bench',
  Spares: 'bench',
  Variants: 'choose',
  'What saves most': 'choose',
  Find: 'choose',
  'What if': 'choose',
  Infill: 'choose',
  'Ways to lie': 'choose',
} as const satisfies Readonly<Record<string, SheetName>>

export type SectionName = keyof typeof SECTION_SHEETS

/** The page's own address behind the `#`, empty on the first visit. */
function hashOf(page: Page): string {
  return new URL(page.url()).hash
}

/** Follows the link to a sheet, unless it is there already, and waits until the sheet is drawn. */
export async function goToSheet(page: Page, sheet: SheetName): Promise<Locator> {
  const place = page.locator(`.${sheet}-sheet`)
  // By its address: behind an open dialog the links have no role.
  const link = page.locator(`nav[aria-label="Sheets"] a[href^="#/${sheet}"]`)
  await link.waitFor()
  if ((await link.getAttribute('aria-current')) !== 'page') await link.click()
  await place.waitFor()
  return place
}

/**
 * Looks at the list of parts, which is on the Frame sheet, and comes back to where the page was.
 */
async function onFrame<T>(page: Page, look: () => Promise<T>): Promise<T> {
  const before = hashOf(page)
  await goToSheet(page, 'frame')
  const seen = await look()
  if (!/^#\/(part|choose|carbon|aircraft|bench)/.test(before)) return seen
  await page.evaluate((hash) => {
    location.hash = hash
  }, before)
  await page.locator(`.${/\w+/.exec(before)?.[0]}-sheet`).waitFor()
  return seen
}

/** The list's row of a part; it is on the Frame sheet only. */
export function rowOf(page: Page, name: string): Locator {
  const words = page.locator('.row-name', { hasText: new RegExp(String.raw`^\s*${name}\s*$`) })
  return page.locator('tr.row', { has: words })
}

/** A row's grams as they are written, looked up on the Frame sheet wherever the page is. */
export async function gramsWordsOf(page: Page, name: string): Promise<string> {
  return onFrame(page, () => rowOf(page, name).locator('.cell-grams .figure').innerText())
}

/** A row's grams as a number, in English. */
export async function gramsOf(page: Page, name: string): Promise<number> {
  return numberIn(await gramsWordsOf(page, name))
}

/** Grams of the part whose sheet is on show, as the sheet's title block writes them. */
export async function gramsWordsInBlock(page: Page): Promise<string> {
  const words = await page.locator('.part-sheet .title-block .block-title').innerText()
  return / · ([^·(]*\d[^·(]*) g\b/.exec(words)?.[1] ?? `no grams in “${words}”`
}

/** The frame's grams in the head as a number. */
export async function totalGrams(page: Page): Promise<number> {
  return numberIn(await page.locator('.total-grams .total-figure').innerText())
}

function numberIn(words: string): number {
  return Number(words.replaceAll(/[^\d.]/g, ''))
}

/** Opens the form of the frame's printer. */
export async function openPrinter(page: Page): Promise<void> {
  await page.getByRole('button', { name: /^Printer: / }).click()
  await page.getByRole('dialog', { name: 'Printer' }).waitFor()
}

/** Waits until every part's layers are counted: no row says any more that it is being worked on. */
export async function waitForCensus(page: Page): Promise<void> {
  await onFrame(page, async () => {
    await page.locator('tr.row').first().waitFor()
    await page.locator('.row-working').first().waitFor({ state: 'detached', timeout: 120_000 })
  })
  // A part of the frame whose row is not drawn yet counts too.
  await page.locator('.rough-words').waitFor({ state: 'detached', timeout: 120_000 })
  // Hours and money follow once the print runs are laid.
  await page.locator('.laying-words').waitFor({ state: 'detached', timeout: 120_000 })
}

/** Presses the sample's button on the empty page and waits until its layers are counted. */
export async function loadSandpiper(page: Page): Promise<void> {
  await page.getByRole('button', { name: /Load Sandpiper/ }).click()
  await waitForCensus(page)
}

/** Follows a row's name to the part's own sheet and unfolds all of its settings. */
export async function openRow(page: Page, name: string): Promise<Locator> {
  await goToSheet(page, 'frame')
  await rowOf(page, name).locator('.row-name').click()
  const panel = page.getByRole('group', { name: `Settings of ${name}` })
  const all = panel.getByRole('button', { name: /^(All|Fewer) settings$/ })
  await all.waitFor()
  // What is told above it may still come, and move it away from under a press: pressed again then.
  while ((await all.getAttribute('aria-expanded')) === 'false') await all.click()
  return panel
}

/** Goes to the sheet that a section is on and waits until the section is drawn. */
export async function openSection(page: Page, name: SectionName): Promise<Locator> {
  await goToSheet(page, SECTION_SHEETS[name])
  const section = page.getByRole('region', { name, exact: true })
  await section.getByRole('heading', { name, level: 3, exact: true }).waitFor()
  await section.locator('.craft-body, .carbon-fields').waitFor()
  return section
}

/** Presses an entry of the menu behind “More”. */
export async function chooseFromMenu(page: Page, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name: 'More', exact: true }).click()
  await page.getByRole('menuitem', { name }).click()
}
