import { chromium, type Browser, type BrowserContextOptions, type Page } from 'playwright'
import { inject } from 'vitest'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'
import { countSample, type Profile } from './countedSample.ts'

/*
 * One browser for all test files that a process goes through, started when first asked for. Each test has a profile of
 * its own in it, as after an installation. It ends with its process: Playwright sees to that.
 */
let browser: Promise<Browser> | undefined
let counted: Promise<Profile> | undefined

async function sharedBrowser(): Promise<Browser> {
  if ((await browser)?.isConnected() === true) return browser!
  const executablePath = findBrowser()
  browser = chromium.launch({
    args: browserFlags(),
    ...(executablePath === undefined ? {} : { executablePath }),
  })
  return browser
}

export interface AppVisit {
  /** The built app, opened in a browser profile of its own. */
  readonly page: Page
  readonly url: string
}

export interface AppVisitOptions extends BrowserContextOptions {
  /** Where to go instead of the build that all tests share. */
  readonly url?: string
  /** Console errors the test brings about on purpose. */
  readonly expectedErrors?: RegExp
  /** As a browser that has counted the Sandpiper's layers before, of the build that all tests share. */
  readonly hasCounted?: boolean
}

async function countedProfile(): Promise<Profile> {
  counted ??= countSample(await sharedBrowser(), inject('appUrl'))
  return counted
}

/**
 * Opens the built app as a new visitor and fails the test, besides what `visit` checks, on any uncaught error, error
 * in the console or breach of the content policy.
 * The service worker is kept away unless `options` allows it, so that a test sees this build and nothing kept.
 */
export async function withApp(
  visit: (visit: AppVisit) => Promise<void>,
  { url = inject('appUrl'), expectedErrors, hasCounted = false, ...options }: AppVisitOptions = {},
): Promise<void> {
  const context = await (
    await sharedBrowser()
  ).newContext({
    serviceWorkers: 'block',
    ...(hasCounted ? { storageState: await countedProfile() } : {}),
    ...options,
  })
  // Generous: it only matters to a test that fails, and a busy machine must not fail one that passes.
  context.setDefaultTimeout(60_000)
  const complaints: string[] = []
  context.on('weberror', (error) => complaints.push(String(error.error())))
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  try {
    const page = await context.newPage()
    await page.goto(url)
    await visit({ page, url })
  } finally {
    await context.close()
  }
  const unexpected = complaints.filter((complaint) => expectedErrors?.test(complaint) !== true)
  if (unexpected.length > 0) throw new Error(`The page complained:\n${unexpected.join('\n')}`)
}
