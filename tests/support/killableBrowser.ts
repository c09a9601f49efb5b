import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { chromium, type Page } from 'playwright'
import { browserEnvironment, browserFlags, findBrowser } from '../../src/tools/browser.mjs'

/** A browser with a profile on disk, of which the test may kill a tab or everything. */
export interface KillableBrowser {
  newPage(): Promise<Page>
  /**
   * Ends the tab's process at once, as the system does when memory runs out; the browser lives on.
   */
  killTab(page: Page): Promise<void>
  /** SIGKILL to the browser and all its helpers: nothing gets to run once more. */
  killAll(): Promise<void>
}

export async function startKillableBrowser(profile: string): Promise<KillableBrowser> {
  const executable = findBrowser() ?? chromium.executablePath()
  const flags = [
    ...browserFlags(),
    '--headless',
    '--disable-gpu',
    '--disable-extensions',
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
    'about:blank',
  ]
  // A process group of its own, so that the helpers die with it.
  const browserProcess = spawn(executable, flags, {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, ...browserEnvironment(executable) },
  })
  const ended = once(browserProcess, 'exit')
  const browser = await chromium.connectOverCDP(await debuggerAddress(browserProcess.stderr))
  const [context] = browser.contexts()
  if (context === undefined) throw new Error('The browser has no profile to work in.')
  context.setDefaultTimeout(60_000)
  return {
    newPage: () => context.newPage(),
    async killTab(page) {
      const crashed = page.waitForEvent('crash')
      const session = await context.newCDPSession(page)
      // It never answers: there is no one left to.
      session.send('Page.crash').catch(() => undefined)
      await crashed
      await page.close()
    },
    async killAll() {
      if (browserProcess.pid === undefined) return
      process.kill(-browserProcess.pid, 'SIGKILL')
      await ended
      await browser.close().catch(() => undefined)
    },
  }
}

async function debuggerAddress(output: NodeJS.ReadableStream): Promise<string> {
  const said: string[] = []
  for await (const line of createInterface({ input: output })) {
    const address = /DevTools listening on (ws:\S+)/.exec(line)?.[1]
    if (address !== undefined) {
      // Nobody reads on; a full pipe would stop the browser.
      output.resume()
      return address
    }
    said.push(line)
  }
  throw new Error(`The browser did not start:\n${said.join('\n')}`)
}
