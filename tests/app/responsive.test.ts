import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { sphere } from '../support/meshes.ts'
import { waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/** 12 parts of 83,000 triangles, 1 million in all. */
const PARTS = 12
const LONGEST_TASK_MS = 50

let folder = ''
let paths: readonly string[] = []

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-'))
  paths = Array.from({ length: PARTS }, (_, i) => {
    const path = join(folder, `part-${i + 1}.stl`)
    writeFileSync(path, writeStlBinary(sphere(15 + i, 204)))
    return path
  })
})

afterAll(() => rmSync(folder, { recursive: true }))

/**
 * The browser's own long-task observer watches while a million triangles are read and counted. Other work on the machine
 * stretches every task, so the calmest of up to four visits counts.
 */
test(
  'never keeps input waiting for more than 50 ms while a million triangles are priced',
  { timeout: 240_000 },
  async () => {
    const longest: number[] = []
    while (longest.length < 4 && !longest.some((ms) => ms <= LONGEST_TASK_MS)) {
      await withApp(async ({ page }) => {
        // The first rendering of the page is not what is measured.
        await page.waitForTimeout(500)
        await watchTasks(page)
        await page
          .locator('input[type=file]')
          .first()
          .setInputFiles([...paths])
        await page
          .locator('tr.row')
          .nth(PARTS - 1)
          .waitFor()
        await page.mouse.wheel(0, 400)
        await waitForCensus(page)
        longest.push(Math.max(0, ...(await tasksSeen(page))))
      })
    }
    console.info(`Longest main-thread task of each visit: ${longest.join(', ')} ms`)
    expect(Math.min(...longest)).toBeLessThanOrEqual(LONGEST_TASK_MS)
  },
)

declare global {
  interface Window {
    longTasks?: number[]
  }
}

async function watchTasks(page: Page): Promise<void> {
  await page.evaluate(() => {
    const seen: number[] = []
    window.longTasks = seen
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries()) seen.push(entry.duration)
    }).observe({ type: 'longtask' })
  })
}

function tasksSeen(page: Page): Promise<readonly number[]> {
  return page.evaluate(() => window.longTasks ?? [])
}
