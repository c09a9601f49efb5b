import { readFileSync } from 'node:fs'
import { zipSync } from 'fflate'
import type { Page } from 'playwright'
import { describe, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { box } from '../support/meshes.ts'
import {
  demoFile,
  dropFiles,
  gramsOf,
  rowOf,
  textFile,
  waitForCensus,
  type DroppedFile,
} from '../support/page.ts'
import {
  meshXml,
  modelXml,
  pack3mf,
  writeObj,
  writeStlAscii,
  writeStlBinary,
} from '../support/writeMesh.ts'

const LOCALE = { locale: 'en-GB', viewport: { width: 1280, height: 900 } }

const BLOCK = box(20, 10, 5)
const BINARY = writeStlBinary(BLOCK)
const TEXT = new TextDecoder().decode(writeStlAscii(BLOCK))
const ITEM = '<item objectid="1"/>'
const MODEL = modelXml(`<object id="1">${meshXml(BLOCK)}</object>`, ITEM)

function withFloat(at: number, value: number): Uint8Array {
  const bytes = BINARY.slice()
  new DataView(bytes.buffer).setFloat32(at, value, true)
  return bytes
}

function promising(triangles: number): Uint8Array {
  const bytes = BINARY.slice()
  new DataView(bytes.buffer).setUint32(80, triangles, true)
  return bytes
}

function utf16(text: string): Uint8Array {
  const units = Uint16Array.from(`\u{FEFF}${text}`, (letter) => letter.charCodeAt(0))
  return new Uint8Array(units.buffer)
}

/**
 * What nobody could price, and what the page has to say of each; `as`: the name it says it under,
 * if not the file's.
 */
const REFUSED: readonly (readonly [DroppedFile, words: RegExp, as?: string])[] = [
  [{ name: 'cut-short.stl', bytes: BINARY.slice(0, 100) }, /not one whole triangle/],
  [{ name: 'not-a-number.stl', bytes: withFloat(84 + 12, NaN) }, /NaN/],
  [{ name: 'infinite.stl', bytes: withFloat(84 + 12, Infinity) }, /Infinity/],
  [{ name: 'far-out.stl', bytes: withFloat(84 + 12, 1e30) }, /./, 'far out'],
  [textFile('commas.stl', TEXT.replaceAll('20', '20,5')), /decimal comma/],
  [
    { name: 'bomb.zip', bytes: zipSync({ 'a.stl': new Uint8Array(8e6) }, { level: 9 }) },
    /./,
    'a.stl',
  ],
  [
    {
      name: 'laughs.3mf',
      bytes: pack3mf(MODEL.replace('<model', '<!DOCTYPE m [<!ENTITY a "ha">]><model')),
    },
    /document type/,
  ],
  [
    {
      name: 'deep.3mf',
      bytes: pack3mf(modelXml(`${'<a>'.repeat(50_000)}${'</a>'.repeat(50_000)}`, '')),
    },
    /./,
  ],
  [
    {
      name: 'doubling.3mf',
      bytes: pack3mf(
        modelXml(
          `<object id="1">${meshXml(BLOCK)}</object>` +
            Array.from(
              { length: 40 },
              (_, i) =>
                `<object id="${i + 2}"><components><component objectid="${i + 1}"/>` +
                `<component objectid="${i + 1}"/></components></object>`,
            ).join(''),
          '<item objectid="41"/>',
        ),
      ),
    },
    /./,
  ],
]

/** Odd, but clear: each is the 20 × 10 × 5 mm block, and ends in figures. */
const PRICED: readonly (readonly [DroppedFile, row: string])[] = [
  [{ name: 'four-billion.stl', bytes: promising(0xffff_ffff) }, 'four billion'],
  [{ name: 'wide-text.stl', bytes: utf16(TEXT) }, 'wide text'],
  [{ name: 'climbing.zip', bytes: zipSync({ '../../../etc/climb.stl': BINARY }) }, 'climb'],
  [{ name: 'turned‮lts.stl', bytes: writeObj(BLOCK) }, 'turnedlts'],
]

describe('a drop of hostile and good files', { timeout: 500_000 }, () => {
  test('ends for each in figures or a refusal with words; the good ones are priced and the page goes on', async () => {
    await withApp(async ({ page }) => {
      // What the block weighs, and how the page sees it, when nothing else is there.
      await dropFiles(page, [{ name: 'plain.stl', bytes: BINARY }])
      await waitForCensus(page)
      const plainG = await gramsOf(page, 'plain')

      await dropFiles(page, [
        demoFile('damper-cup.stl'),
        ...REFUSED.map(([file]) => file),
        ...PRICED.map(([file]) => file),
        demoFile('gps-mast.stl'),
      ])
      await page.locator('.incoming').getByText('Opening').first().waitFor({ state: 'detached' })
      await page
        .locator('tr.row')
        .nth(PRICED.length + 2)
        .waitFor()
      await waitForCensus(page)

      for (const [, row] of PRICED)
        await expect.poll(() => gramsOf(page, row), { message: row }).toBe(plainG)
      for (const row of ['damper cup', 'gps mast']) {
        await expect.poll(() => gramsOf(page, row), { message: row }).toBeGreaterThan(0)
      }
      const said = await endings(page)
      for (const [{ name }, words, as = name] of REFUSED) expect(said.get(as), name).toMatch(words)
      // Nothing else became a row, and nothing else was left out.
      expect(said.size).toBe(REFUSED.length)
      await expect
        .poll(() => page.locator('tr.row:not(:has(.status-wrong))').count())
        .toBe(PRICED.length + 3)

      // The tab is alive: it is edited and saved.
      const name = page.getByRole('textbox', { name: 'Name of the frame' })
      await name.fill('After the storm')
      await name.press('Enter')
      await page.getByText('Saved on this device').waitFor()
    }, LOCALE)
  })

  test('that are large can be called off while they are read; the others are priced', async () => {
    await withApp(async ({ page }) => {
      await dropFiles(page, [demoFile('damper-cup.stl')])
      await waitForCensus(page)
      const idle = page.workers().length
      // 120 MB of text: no machine is done with it before a hand can press a button.
      await dropLarge(page, 'endless.stl', TEXT.slice(TEXT.indexOf('facet')), 120e6)
      await dropFiles(page, [demoFile('gps-mast.stl')])
      await page.getByRole('button', { name: 'Cancel opening endless.stl' }).click()
      await page.getByText('endless.stl').waitFor({ state: 'detached' })
      await rowOf(page, 'gps mast').waitFor()
      await waitForCensus(page)
      await expect.poll(() => gramsOf(page, 'gps mast')).toBeGreaterThan(0)
      await expect.poll(() => page.locator('tr.row').count()).toBe(2)
      expect(await page.getByRole('region', { name: 'Files left out' }).count()).toBe(0)
      // Its worker went with it; what is left are those of before and the one for the third file.
      await expect.poll(() => page.workers().length).toBeLessThanOrEqual(idle + 1)
    }, LOCALE)
  })
})

test('a saved frame that is cut short opens with what is sound, and says what is not', async () => {
  let mast = 0
  let whole: Buffer = Buffer.alloc(0)
  await withApp(async ({ page }) => {
    await dropFiles(page, ['gps-mast.stl', 'damper-cup.stl'].map(demoFile))
    await rowOf(page, 'damper cup').waitFor()
    await waitForCensus(page)
    mast = await gramsOf(page, 'gps mast')
    const downloading = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save file' }).click()
    whole = readFileSync(await (await downloading).path())
  }, LOCALE)

  // On another device: the first one still has the meshes and would not miss them.
  await withApp(async ({ page }) => {
    // The meshes come last, in the order of the parts.
    await dropFiles(page, [{ name: 'cut.preweigh', bytes: whole.subarray(0, -2000) }])
    await page.locator('tr.row').nth(1).waitFor()
    await rowOf(page, 'damper cup').locator('.status-wrong').waitFor()
    await waitForCensus(page)
    await expect.poll(() => gramsOf(page, 'gps mast')).toBe(mast)
    const said = await page.getByRole('region', { name: 'Files left out' }).innerText()
    expect(said).toContain('2 things could not be read')
    expect(said).toContain('cut short')
    expect(said).toContain('The mesh of “damper cup” (damper-cup.stl) is damaged')
    // The mesh file heals it.
    await dropFiles(page, [demoFile('damper-cup.stl')])
    await rowOf(page, 'damper cup').locator('.status-wrong').waitFor({ state: 'detached' })
    await waitForCensus(page)
    await expect.poll(() => page.locator('tr.row').count()).toBe(2)
    await expect.poll(() => gramsOf(page, 'damper cup')).toBeGreaterThan(0)
  }, LOCALE)
}, 300_000)

/**
 * What the page says of each file it did not price, by name: in the list of files left out or in
 * the file's row.
 */
async function endings(page: Page): Promise<Map<string, string>> {
  const said = new Map<string, string>()
  const lines = page.getByRole('region', { name: 'Files left out' }).locator('li')
  for (const line of await lines.all()) {
    said.set(await line.locator('strong').innerText(), await line.innerText())
  }
  for (const row of await page.locator('tr.row:has(.status-wrong)').all()) {
    said.set((await row.locator('.row-name').innerText()).trim(), await row.innerText())
  }
  return said
}

/** Drops a text file made in the page: `text` repeated up to some size. */
async function dropLarge(page: Page, name: string, text: string, size: number): Promise<void> {
  await page.evaluate(
    ([fileName, piece, bytes]) => {
      const many = piece.repeat(Math.ceil(1e6 / piece.length))
      const pieces = Array.from({ length: Math.ceil(bytes / many.length) }, () => many)
      const transfer = new DataTransfer()
      transfer.items.add(new File(['solid endless\n', ...pieces], fileName))
      for (const kind of ['dragenter', 'dragover', 'drop']) {
        const event = new DragEvent(kind, {
          dataTransfer: transfer,
          cancelable: true,
          bubbles: true,
        })
        document.body.dispatchEvent(event)
      }
    },
    [name, text, size] as const,
  )
}
