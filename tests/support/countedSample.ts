import type { Browser, BrowserContext } from 'playwright'
import { loadSandpiper } from './page.ts'

const DATABASE = 'preweigh'
/** What a browser profile keeps of one origin. */
export type Profile = Awaited<ReturnType<BrowserContext['storageState']>>

/** Of the page's database, what is computed from meshes and belongs to no frame. */
const COMPUTED = ['censuses', 'reads', 'answers']

/** Sheets whose pictures and sums are slow. */
const SLOW_SHEETS = ['#/part/2', '#/choose', '#/carbon', '#/bench', '#/paper']
/** A sheet for which no worker has answered for so long is taken as done. ms */
const QUIET_MS = 1500

/**
 * A profile in which the Sandpiper's layers were counted and its sheets were drawn once, by the page
 * at `url` itself, and that holds no frame. A page opened in it is as empty as on a first visit, but
 * has the sample's figures at once: working them out takes three quarters of what a first load
 * costs, and a test of something else needs none of it.
 */
export async function countSample(browser: Browser, url: string): Promise<Profile> {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    locale: 'en-GB',
    viewport: { width: 1440, height: 900 },
  })
  context.setDefaultTimeout(120_000)
  try {
    const page = await context.newPage()
    await page.goto(url)
    await loadSandpiper(page)
    for (const address of SLOW_SHEETS) {
      await page.evaluate((hash) => (location.hash = hash), address)
      await page.waitForFunction(isQuiet, [DATABASE, 'answers', QUIET_MS] as const)
    }
    await page.getByText('Saved on this device').waitFor()
    await page.evaluate(keepOnly, COMPUTED)
    return await context.storageState({ indexedDB: true })
  } finally {
    await context.close()
  }
}

/** Runs in the page, again and again: whether a store has had nothing new for so long. */
async function isQuiet([name, store, quietMs]: readonly [
  string,
  string,
  number,
]): Promise<boolean> {
  const opening = indexedDB.open(name)
  await new Promise((resolve) => opening.addEventListener('success', resolve))
  const counting = opening.result.transaction(store).objectStore(store).count()
  await new Promise((resolve) => counting.addEventListener('success', resolve))
  opening.result.close()
  const seen = (globalThis as { seen?: { count: number; at: number; hash: string } }).seen
  const { hash } = location
  if (seen?.count !== counting.result || seen.hash !== hash) {
    Object.assign(globalThis, { seen: { count: counting.result, at: Date.now(), hash } })
    return false
  }
  return Date.now() - seen.at > quietMs
}

/** Runs in the page: empties all other stores of its database. */
async function keepOnly(kept: readonly string[]): Promise<void> {
  const settled = <T>(request: IDBRequest<T>) =>
    new Promise<T>((resolve, reject) => {
      request.addEventListener('success', () => resolve(request.result))
      request.addEventListener('error', () => reject(request.error ?? new Error('No reason.')))
    })
  for (const { name } of await indexedDB.databases()) {
    if (name === undefined) continue
    const db = await settled(indexedDB.open(name))
    const others = [...db.objectStoreNames].filter((store) => !kept.includes(store))
    const transaction = db.transaction(others, 'readwrite')
    await Promise.all(others.map((store) => settled(transaction.objectStore(store).clear())))
    db.close()
  }
}
