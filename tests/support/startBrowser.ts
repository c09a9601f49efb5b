import { chromium, type Browser } from 'playwright'
import { browserFlags, findBrowser } from '../../src/tools/browser.mjs'

/** The browser that `npm test` found or installed. */
export function startBrowser(): Promise<Browser> {
  const executablePath = findBrowser()
  return chromium.launch({
    args: browserFlags(),
    ...(executablePath === undefined ? {} : { executablePath }),
  })
}
