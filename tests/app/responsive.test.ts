import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { withApp } from '../support/app.ts'
import { countMainThread, type MainThreadWork } from '../support/mainThreadWork.ts'
import { sphere } from '../support/meshes.ts'
import { waitForCensus } from '../support/page.ts'
import { writeStlBinary } from '../support/writeMesh.ts'

/*
 * Input waits while the page's own thread works, so that thread may do nothing that grows with a mesh. How long a task
 * takes says as much of the machine as of the page (`npm run bench` measures it); how often the page's script runs,
 * what it copies and what it lays out is the same everywhere. Measured, for half a million triangles: 22,000 runs of
 * the innermost piece, most of them for showing progress, 223 bytes posted, 268 values told, 50,000 letters of markup.
 */
const TRIANGLES = 708 * 706
/**
 * Once for every fourth triangle; a slower machine shows progress more often, but not ten times.
 */
const MOST_RUNS = TRIANGLES / 4
/** Of 25 MB of file. */
const MOST_POSTED = 100_000
const MOST_TOLD = 10_000
const MOST_MARKUP = 500_000

let folder = ''
let file = ''
let triangles = 0

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'preweigh-'))
  file = join(folder, 'ball.stl')
  const ball = sphere(25, 708)
  triangles = ball.indices.length / 3
  writeFileSync(file, writeStlBinary(ball))
})

afterAll(() => rmSync(folder, { recursive: true }))

const breaches = ({ mostRuns, mostPosted, mostTold, markup }: MainThreadWork): string[] => [
  ...(mostRuns > MOST_RUNS ? ['script'] : []),
  ...(mostPosted > MOST_POSTED ? ['posted'] : []),
  ...(mostTold > MOST_TOLD ? ['told'] : []),
  ...(markup > MOST_MARKUP ? ['markup'] : []),
]

test(
  'the page’s own thread does nothing that grows with a mesh while half a million triangles are priced',
  { timeout: 300_000 },
  async ({ annotate }) => {
    expect(triangles).toBe(TRIANGLES)
    await withApp(async ({ page }) => {
      const work = await countMainThread(page, async () => {
        await page.locator('input[type=file]').first().setInputFiles(file)
        await page.locator('tr.row').waitFor()
        await page.mouse.wheel(0, 400)
        await waitForCensus(page)
        await page.getByText('Saved on this device').waitFor()
      })
      await annotate(JSON.stringify(work))
      // The page's script was watched, and its talk with workers.
      expect(work.mostRuns).toBeGreaterThan(1000)
      expect(work.mostPosted).toBeGreaterThan(0)
      expect(work.mostTold).toBeGreaterThan(10)
      expect(breaches(work)).toEqual([])
    })
  },
)

test('a loop over the triangles, a copy of them, and a drawing of each would be seen', async () => {
  await withApp(async ({ page, url }) => {
    const work = await countMainThread(page, async () => {
      const talk = await page.evaluate(
        ([times, script]) => {
          let sum = 0
          for (let i = 0; i < times; i++) sum += i % 7
          // Ended before it begins: what is sent to it counts all the same.
          const worker = new Worker(script)
          worker.postMessage({ corners: new Float32Array(times) })
          worker.terminate()
          const line = document.createElement('p')
          line.title = 'M0 0'.repeat(times)
          document.body.append(line)
          return sum
        },
        [TRIANGLES, `${url}sw.js`] as const,
      )
      expect(talk).toBeGreaterThan(0)
    })
    expect(breaches(work)).toEqual(['script', 'posted', 'markup'])
  })
})
