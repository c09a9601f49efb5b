import type { Browser, BrowserContext } from 'playwright'
import { loadSandpiper } from './page.ts'

/** What a browser profile keeps of one origin. */
export type Profile = Awaited<ReturnType<BrowserContext['storageState']>>

/** Of the page's database, what is computed from meshes and belongs to no frame. */
const COMPUTED = ['censuses', 'reads', 'answers']

/**
 * A profile in which the Sandpiper's layers were counted once, by the page at `url` itself, and
 * that holds no frame. A page opened in it is as empty as on a first visit, but has the sample's
 * figures at once: counting takes three quarters of what a first load costs, and a test of
 * something else needs none of it.
 */
export async function countSample(browser: Browser, url: string): Promise<Profile> {
  const context = await browser.newContext({ serviceWorkers: 'block', locale: 'en-GB' })
  context.setDefaultTimeout(120_000)
  try {
    const page = await context.newPage()
    await page.goto(url)
    await loadSandpiper(page)
    await page.getByText('Saved on this device').waitFor()
    await page.evaluate(keepOnly, COMPUTED)
    return await context.storageState({ indexedDB: true })
  } finally {
    await context.close()
  }
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
