import { createServer, type Server } from 'node:http'
import { countSample, type Profile } from './countedSample.ts'
import { startBrowser } from './startBrowser.ts'

/**
 * Hands out the profile of `countSample`, made when it is first asked for: once for all processes
 * of a run, none of which needs to wait for its own.
 */
export function serveProfile(appUrl: string): Server {
  let made: Promise<Profile> | undefined
  return createServer((_, answer) => {
    made ??= makeProfile(appUrl)
    made.then(
      (profile) => answer.end(JSON.stringify(profile)),
      (error: unknown) => answer.writeHead(500).end(String(error)),
    )
  })
}

async function makeProfile(appUrl: string): Promise<Profile> {
  const browser = await startBrowser()
  try {
    return await countSample(browser, appUrl)
  } finally {
    await browser.close()
  }
}
