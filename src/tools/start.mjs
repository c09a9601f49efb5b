// npm start: installs and builds what is missing, then serves the app on this machine.
import { parseArgs } from 'node:util'
import { build, DIST, ensurePackages, isBuildStale } from './project.mjs'
import { createAppServer, listen } from './serve.mjs'

const DEFAULT_PORT = 4780
const USAGE = `usage: npm start -- [--port N]   (N from 1 to 65535; ${DEFAULT_PORT} when left out)`

const wantedPort = readPort()
if (wantedPort === null) {
  console.error(USAGE)
  process.exit(2)
}
if (!ensurePackages(console.log)) fail('npm ci did not work; its messages are above.')
if (isBuildStale() && !build()) fail('The build did not work; its messages are above.')

const port = await listen(createAppServer(DIST), wantedPort)
if (port !== wantedPort) {
  console.log(
    `Port ${wantedPort} is taken, so ${port} is used. A browser keeps saved frames per address: ` +
      `those saved under port ${wantedPort} will not show here. Save a project file to move one over.`,
  )
}
stopWithNpm()
console.log(`Preweigh is at http://127.0.0.1:${port}/`)

/**
 * When npm is ended by a signal it does not always end what it started: without this the server
 * would stay behind.
 */
function stopWithNpm() {
  if (process.env['npm_lifecycle_event'] !== 'start') return
  const parent = process.ppid
  setInterval(() => {
    if (process.ppid !== parent) process.exit(0)
  }, 1000).unref()
}

/** @returns {number | null} null when the command line makes no sense */
function readPort() {
  try {
    const { values } = parseArgs({ options: { port: { type: 'string' } } })
    const asked = Number(values.port ?? DEFAULT_PORT)
    return Number.isInteger(asked) && asked >= 1 && asked <= 65_535 ? asked : null
  } catch {
    return null
  }
}

/**
 * @param {string} message
 * @returns {never}
 */
function fail(message) {
  console.error(message)
  process.exit(1)
}
