// Finds a Chromium for the tests, and installs one where there is none. Plain JavaScript: it runs
// before anything is built.
import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { homedir } from 'node:os'
import path from 'node:path'

const require = createRequire(import.meta.url)

/** Last resort, see `unpackSparticuz`. Newer versions need Node 22. */
const SPARTICUZ = '@sparticuz/chromium@143.0.4'

/**
 * Flags every test browser starts with. WebGL is drawn by the processor, so that machines without a
 * GPU pass; the last keep Chromium from talking to the network on its own.
 *
 * @returns {string[]}
 */
export function browserFlags() {
  const isRoot = process.getuid?.() === 0
  return [
    ...(isRoot ? ['--no-sandbox'] : []),
    '--use-gl=angle',
    '--use-angle=swiftshader',
    '--enable-unsafe-swiftshader',
    // Only WebGL needs that; the page itself is put together faster without (a fifth of a frame's
    // first load).
    '--disable-gpu-compositing',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ]
}

/**
 * The browser already on this machine: `CHROME_PATH`, Playwright's own, then the system's Chrome,
 * Chromium or Edge. `PREWEIGH_SKIP_SYSTEM_BROWSER=1` passes over the last, to try the ways of
 * installing one.
 *
 * @returns {string | undefined} path of the executable
 */
export function findBrowser() {
  const named = process.env['CHROME_PATH']
  if (named !== undefined && named !== '') {
    if (!existsSync(named))
      throw new Error(`CHROME_PATH names ${named}, and there is no such file.`)
    return named
  }
  return findPlaywrights() ?? findSystems() ?? findUnpacked()?.executable
}

/**
 * Environment the browser needs besides the path: the libraries that came with the unpacked last
 * resort.
 *
 * @param {string} executable
 * @returns {Record<string, string>}
 */
export function browserEnvironment(executable) {
  const unpacked = findUnpacked()
  if (unpacked?.executable !== executable) return {}
  const before = process.env['LD_LIBRARY_PATH']
  return {
    LD_LIBRARY_PATH: before ? `${unpacked.libraries}:${before}` : unpacked.libraries,
  }
}

/**
 * Installs a browser where `findBrowser` found none, trying one way after another.
 *
 * @param {(line: string) => void} say
 * @returns {string | undefined} path of the executable
 */
export function installBrowser(say) {
  for (const [name, install] of /** @type {const} */ ([
    ["Debian's chromium package", installDebians],
    ["Playwright's Chromium", installPlaywrights],
    [SPARTICUZ, unpackSparticuz],
  ])) {
    const found = install(say)
    if (found !== undefined) {
      say(`Browser: ${found} (${name})`)
      return found
    }
  }
  return undefined
}

function findPlaywrights() {
  try {
    const file = require('playwright').chromium.executablePath()
    return existsSync(file) ? file : undefined
  } catch {
    return undefined
  }
}

function findSystems() {
  if (process.env['PREWEIGH_SKIP_SYSTEM_BROWSER'] === '1') return undefined
  return systemPaths().find((file) => existsSync(file))
}

/** @returns {string[]} */
function systemPaths() {
  if (process.platform === 'darwin') {
    return ['Google Chrome', 'Chromium', 'Microsoft Edge'].map(
      (app) => `/Applications/${app}.app/Contents/MacOS/${app}`,
    )
  }
  if (process.platform === 'win32') {
    return ['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((variable) => {
      const root = process.env[variable]
      if (root === undefined) return []
      return [
        path.join(root, 'Google', 'Chrome', 'Application', 'chrome.exe'),
        path.join(root, 'Chromium', 'Application', 'chrome.exe'),
        path.join(root, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
      ]
    })
  }
  const names = [
    'google-chrome-stable',
    'google-chrome',
    'chromium',
    'chromium-browser',
    'microsoft-edge-stable',
    'microsoft-edge',
  ]
  const folders = (process.env['PATH'] ?? '/usr/local/bin:/usr/bin:/bin').split(':')
  return names.flatMap((name) => folders.map((folder) => path.join(folder, name)))
}

/** @param {(line: string) => void} say */
function installDebians(say) {
  const isDebian = process.platform === 'linux' && existsSync('/etc/debian_version')
  if (!isDebian || process.getuid?.() !== 0) return undefined
  // Ubuntu's package of this name only points to a snap, which does not run in a container.
  if (/^ID=ubuntu$/m.test(readFileSync('/etc/os-release', 'utf8'))) return undefined
  if (process.env['PREWEIGH_SKIP_SYSTEM_BROWSER'] === '1') return undefined
  say('No browser found: installing chromium with apt-get …')
  const env = { DEBIAN_FRONTEND: 'noninteractive' }
  run('apt-get', ['update', '-qq'], env)
  run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], env)
  return findSystems()
}

/** @param {(line: string) => void} say */
function installPlaywrights(say) {
  say('No browser found: installing Chromium with Playwright …')
  run('npx', ['playwright', 'install', 'chromium'])
  return findPlaywrights()
}

/**
 * A Chromium that comes inside an npm package, with the libraries it needs. Kept outside the
 * project, since only machines without any other way need its 60 MB.
 *
 * @param {(line: string) => void} say
 */
function unpackSparticuz(say) {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined
  say(`No browser found: unpacking ${SPARTICUZ} …`)
  const folder = unpackFolder()
  mkdirSync(folder, { recursive: true })
  run('npm', ['install', '--prefix', folder, '--no-save', '--no-audit', '--no-fund', SPARTICUZ])
  // The package unpacks itself into the temporary folder; a process of its own lets us choose that
  // folder. It takes the libraries along only where it believes to run on the cloud service it was
  // made for.
  run(
    process.execPath,
    [
      '--input-type=module',
      '-e',
      `import chromium from ${JSON.stringify(path.join(folder, 'node_modules/@sparticuz/chromium/build/esm/index.js'))}
       await chromium.executablePath()`,
    ],
    { TMPDIR: folder, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs20.x' },
  )
  return findUnpacked()?.executable
}

function findUnpacked() {
  const folder = unpackFolder()
  const executable = path.join(folder, 'chromium')
  if (!existsSync(executable)) return undefined
  return { executable, libraries: path.join(folder, 'al2023', 'lib') }
}

function unpackFolder() {
  const cache = process.env['XDG_CACHE_HOME'] ?? path.join(homedir(), '.cache')
  return path.join(cache, 'preweigh', SPARTICUZ.replace(/[^a-z0-9.]+/gi, '-'))
}

/**
 * @param {string} command
 * @param {string[]} args
 * @param {Record<string, string>} env
 */
function run(command, args, env = {}) {
  return spawnSync(command, args, {
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  })
}
