import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chromium } from 'playwright'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'
import { createAppServer, listen } from '../../src/tools/serve.mjs'
import { sphere } from '../support/meshes.ts'
import { writeStlBinary } from '../support/writeMesh.ts'
import { buildApp } from './buildApp.ts'

/** 12 parts of 41,208 triangles, half a million in all. */
const PARTS = 12

/** From the moment the files are handed to the page, ms. */
export interface PageTimes {
  /** The frame's first total is on screen. */
  readonly firstTotalMs: number
  /** Every part has at least its rough figures, and the total counts them all. */
  readonly allRoughMs: number
  /** Every layer is counted. */
  readonly allCountedMs: number
}

/**
 * Drops half a million triangles on the built app in Chromium and clocks what appears when.
 *
 * @param folder for the meshes and the build.
 * @returns one reading a visit.
 */
export async function pageTimes(folder: string, visits: number): Promise<readonly PageTimes[]> {
  const build = buildApp(folder)
  const paths = writeBalls(folder)
  const server = createAppServer(build)
  const url = `http://127.0.0.1:${await listen(server, 0)}/`
  const executablePath = findBrowser()
  const browser = await chromium.launch({
    args: browserFlags(),
    ...(executablePath === undefined ? {} : { executablePath }),
  })
  try {
    const times: PageTimes[] = []
    while (times.length < visits) {
      const context = await browser.newContext({ serviceWorkers: 'block' })
      const page = await context.newPage()
      await page.goto(url)
      await page.locator('input[type=file]').first().waitFor({ state: 'attached' })
      const watching = page.evaluate(watch, PARTS)
      await page.locator('input[type=file]').first().setInputFiles(paths)
      times.push(await watching)
      await context.close()
    }
    return times
  } finally {
    await browser.close()
    server.close()
    server.closeAllConnections()
  }
}

/** @returns their paths. */
export function writeBalls(folder: string): readonly string[] {
  return Array.from({ length: PARTS }, (_, i) => {
    const path = join(folder, `part-${i + 1}.stl`)
    writeFileSync(path, writeStlBinary(sphere(15 + i, 204)))
    return path
  })
}

/** Runs in the page: its own clock, so that the driver's delays do not count. */
function watch(parts: number): Promise<PageTimes> {
  return new Promise((resolve) => {
    let startedAt: number | null = null
    let firstTotalMs: number | null = null
    let allRoughMs: number | null = null
    document.addEventListener('change', () => (startedAt ??= performance.now()), true)
    // No function of its own here: the driver sends this text alone, without the helpers a compiler
    // may add.
    const timer = setInterval(() => {
      if (startedAt === null) return
      const ms = performance.now() - startedAt
      const shown = document.querySelectorAll('tr.row .cell-grams .figure').length
      if (shown > 0 && document.querySelector('.total-grams .total-figure') !== null) {
        firstTotalMs ??= ms
      }
      if (shown === parts) allRoughMs ??= ms
      if (firstTotalMs === null || allRoughMs === null) return
      if (document.querySelector('.rough-words') !== null) return
      clearInterval(timer)
      resolve({ firstTotalMs, allRoughMs, allCountedMs: ms })
    }, 10)
  })
}
