// npm test: the whole gate. Installs what is missing, the browser too, runs every check even after
// one has failed, and closes with a line `N passed, N failed` in which each check and each test
// counts as one.
import { spawn, spawnSync } from 'node:child_process'
import { existsSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { parseArgs } from 'node:util'
import { browserEnvironment, findBrowser, installBrowser } from './browser.mjs'
import { countTests } from './countTests.mjs'
import { listFailures } from './listFailures.mjs'
import { DIST, ensurePackages, ROOT } from './project.mjs'

/** Check by name: the npm script behind it. */
const CHECKS = {
  format: 'check:format',
  lint: 'check:lint',
  types: 'check:types',
  dead: 'check:dead',
  build: 'build',
  size: 'check:size',
  specs: 'check:specs',
}
/**
 * Checks that run at a time; most use one core each. The tests come by themselves, on all cores.
 */
const LANES = 2
const REPORT = path.join(ROOT, 'node_modules', '.cache', 'specs.json')

let passed = 0
let failed = 0
/** @type {string[]} */
const summary = []

const wanted = readWanted()
if (wanted === null) {
  console.error(`usage: npm test [-- --only CHECK[,CHECK…]]   (${Object.keys(CHECKS).join(', ')})`)
  process.exit(2)
}
if (ensurePackages(console.log)) {
  await runChecks(wanted.filter((name) => name !== 'specs'))
  if (wanted.includes('specs')) runSpecs()
} else {
  count('packages', false, 'npm ci did not work; its messages are above')
}
console.log(`\n${summary.join('\n')}\n`)
console.log(`${passed} passed, ${failed} failed`)
process.exitCode = failed === 0 ? 0 : 1

/** @typedef {keyof typeof CHECKS} CheckName */

/** @param {readonly CheckName[]} names */
async function runChecks(names) {
  // What is built is what is sized.
  const left = names.filter((name) => name !== 'size' || !names.includes('build'))
  const lane = async () => {
    for (let name = left.shift(); name !== undefined; name = left.shift()) {
      await runCheck(name)
      if (name === 'build' && names.includes('size')) await runCheck('size')
    }
  }
  await Promise.all(Array.from({ length: LANES }, lane))
}

/** @param {CheckName} name */
async function runCheck(name) {
  const startedAt = Date.now()
  const { status, said } = await startScript(CHECKS[name])
  const isGood = status === 0
  printHead(name)
  // What a check says matters when it fails; the measured sizes are worth reading always.
  if (!isGood || name === 'size') console.log(said.trimEnd())
  count(name, isGood, `${((Date.now() - startedAt) / 1000).toFixed(1)} s`)
}

/** @param {CheckName} name */
function printHead(name) {
  console.log(`\n── ${name} ${'─'.repeat(60 - name.length)}`)
}

function runSpecs() {
  printHead('specs')
  const browser = prepareBrowser()
  count('browser', browser !== undefined, browser ?? 'none found, and none could be installed')
  rmSync(REPORT, { force: true })
  const result = runScript(
    CHECKS.specs,
    [
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${REPORT}`,
      ...(browser === undefined ? ['--project=node'] : []),
    ],
    {
      ...(browser === undefined ? {} : { CHROME_PATH: browser, ...browserEnvironment(browser) }),
      // The build of this run, if it was made; else the tests make their own.
      ...(summary.some((line) => line.startsWith('passed  build')) ? { PREWEIGH_DIST: DIST } : {}),
    },
  )
  const report = existsSync(REPORT) ? JSON.parse(readFileSync(REPORT, 'utf8')) : null
  const tests = countTests(report, result.status)
  passed += tests.passed
  failed += tests.failed
  summary.push(
    `${tests.failed === 0 ? 'passed' : 'FAILED'}  specs: ${tests.passed} passed, ${tests.failed} failed, ` +
      `${tests.skipped} skipped${tests.note === '' ? '' : ` (${tests.note})`}`,
    ...listFailures(report, ROOT),
  )
}

/** @returns {string | undefined} */
function prepareBrowser() {
  try {
    return findBrowser() ?? installBrowser(console.log)
  } catch (error) {
    console.error(String(error))
    return undefined
  }
}

/**
 * @param {string} script
 * @returns {Promise<{ status: number | null, said: string }>}
 */
function startScript(script) {
  return new Promise((resolve) => {
    const child = spawn('npm', ['run', '--silent', script], {
      cwd: ROOT,
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    })
    let said = ''
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (words) => (said += words))
    }
    child.on('error', (error) => resolve({ status: null, said: String(error) }))
    child.on('close', (status) => resolve({ status, said }))
  })
}

/**
 * Runs with this terminal as its own.
 *
 * @param {string} script
 * @param {readonly string[]} args
 * @param {Record<string, string>} env
 */
function runScript(script, args, env) {
  return spawnSync('npm', ['run', '--silent', script, '--', ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
    shell: process.platform === 'win32',
  })
}

/**
 * @param {string} name
 * @param {boolean} isGood
 * @param {string} note
 */
function count(name, isGood, note) {
  if (isGood) passed += 1
  else failed += 1
  const line = `${isGood ? 'passed' : 'FAILED'}  ${name} (${note})`
  summary.push(line)
  console.log(line)
}

/** @returns {CheckName[] | null} null when the command line makes no sense */
function readWanted() {
  const all = /** @type {CheckName[]} */ (Object.keys(CHECKS))
  try {
    const { values } = parseArgs({ options: { only: { type: 'string' } } })
    if (values.only === undefined) return all
    const names = values.only.split(',')
    return names.every((name) => Object.hasOwn(CHECKS, name))
      ? all.filter((name) => names.includes(name))
      : null
  } catch {
    return null
  }
}
