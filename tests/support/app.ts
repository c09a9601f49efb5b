import type { Browser, BrowserContextOptions, Page } from 'playwright'
import { afterAll, inject } from 'vitest'
import type { Profile } from './countedSample.ts'
import { startBrowser } from './startBrowser.ts'

/*
 * One browser for all test files that a process goes through, started when first asked for. Each test has a profile of
 * its own in it, as after an installation. It ends with its process: Playwright sees to that.
 */
let browser: Promise<Browser> | undefined
let counted: Promise<Profile> | undefined

async function sharedBrowser(): Promise<Browser> {
  if ((await browser)?.isConnected() === true) return browser!
  browser = startBrowser()
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
  /**
   * As a browser that has counted the Sandpiper's layers before, of the build that all tests share.
   */
  readonly hasCounted?: boolean
}

async function countedProfile(): Promise<Profile> {
  counted ??= fetch(inject('profileUrl')).then(async (answer) => (await answer.json()) as Profile)
  return counted
}

interface OpenVisit extends AppVisit {
  /** Throws what the page has complained of since it was asked last. */
  complain(): void
  close(): Promise<void>
}

async function openApp({
  url = inject('appUrl'),
  expectedErrors,
  hasCounted = false,
  ...options
}: AppVisitOptions): Promise<OpenVisit> {
  const context = await (
    await sharedBrowser()
  ).newContext({
    serviceWorkers: 'block',
    ...(hasCounted ? { storageState: await countedProfile() } : {}),
    ...options,
  })
  // Generous: it only matters to a test that fails, and a busy machine must not fail one that
  // passes.
  context.setDefaultTimeout(120_000)
  const complaints: string[] = []
  context.on('weberror', (error) => complaints.push(String(error.error())))
  context.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  const page = await context.newPage().catch(async (error: unknown) => {
    await context.close()
    throw error
  })
  return {
    page,
    url,
    complain() {
      const unexpected = complaints
        .splice(0)
        .filter((complaint) => expectedErrors?.test(complaint) !== true)
      if (unexpected.length > 0) throw new Error(`The page complained:\n${unexpected.join('\n')}`)
    },
    close: () => context.close(),
  }
}

/**
 * Opens the built app as a new visitor and fails the test, besides what `visit` checks, on any
 * uncaught error, error in the console or breach of the content policy. The service worker is kept
 * away unless `options` allows it, so that a test sees this build and nothing kept.
 */
export async function withApp(
  visit: (visit: AppVisit) => Promise<void>,
  options: AppVisitOptions = {},
): Promise<void> {
  const opened = await openApp(options)
  try {
    await opened.page.goto(opened.url)
    await visit(opened)
  } finally {
    await opened.close()
  }
  opened.complain()
}

/**
 * One visit for several tests of a file, which saves each but the first what a visit costs. Every
 * test finds the page as the one before left it: it goes where it wants to be, and puts back what
 * the next would miss. After one that failed the next begins anew, as does one that is run alone.
 *
 * @param begin brings about what all of them need.
 */
export function sharedApp(
  begin: (page: Page) => Promise<unknown>,
  options: AppVisitOptions = {},
): (visit: (visit: AppVisit) => Promise<void>) => Promise<void> {
  let opened: OpenVisit | null = null
  const leave = async (): Promise<void> => {
    const left = opened
    opened = null
    await left?.close()
  }
  afterAll(leave)
  return async (visit) => {
    try {
      if (opened === null) {
        opened = await openApp(options)
        await opened.page.goto(opened.url)
        await begin(opened.page)
      }
      await visit(opened)
      opened.complain()
    } catch (error) {
      await leave()
      throw error
    }
  }
}
