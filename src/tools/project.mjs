// What `npm start` and `npm test` share: the project's folder, its packages and its build.
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = fileURLToPath(new URL('../..', import.meta.url))
export const DIST = path.join(ROOT, 'dist')

const SOURCES = [
  'index.html',
  'package.json',
  'package-lock.json',
  'public',
  'src',
  'vite.config.ts',
]

/**
 * Runs `npm ci` unless every package the lock file names is there in its version.
 *
 * @param {(line: string) => void} say
 * @returns {boolean} whether the packages are there now
 */
export function ensurePackages(say) {
  if (missingPackages().length === 0) return true
  say('Installing packages (npm ci) …')
  const result = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  })
  return result.status === 0 && missingPackages().length === 0
}

/**
 * Builds the app into `dist`.
 *
 * @returns {boolean} whether it worked
 */
export function build() {
  return runPackage('vite/bin/vite.js', ['build'], { NODE_ENV: 'production' }) === 0
}

/** @returns {boolean} whether some source is newer than the last build, or there is none */
export function isBuildStale() {
  const built = path.join(DIST, 'index.html')
  if (!existsSync(built)) return true
  const builtAt = statSync(built).mtimeMs
  return SOURCES.some((source) => newestMs(path.join(ROOT, source)) > builtAt)
}

/**
 * Runs a program of an installed package in the project's folder, its output passed on.
 *
 * @param {string} script path inside node_modules
 * @param {readonly string[]} args
 * @param {Record<string, string>} env
 * @returns {number} exit code
 */
export function runPackage(script, args, env = {}) {
  const result = spawnSync(process.execPath, [path.join(ROOT, 'node_modules', script), ...args], {
    cwd: ROOT,
    stdio: ['ignore', 'inherit', 'inherit'],
    env: { ...process.env, ...env },
  })
  return result.status ?? 1
}

/** @returns {string[]} */
function missingPackages() {
  const wanted = readPackages(path.join(ROOT, 'package-lock.json'))
  const present = readPackages(path.join(ROOT, 'node_modules', '.package-lock.json'))
  return Object.entries(wanted)
    .filter(([name, { optional }]) => name !== '' && optional !== true)
    .filter(([name, { version }]) => present[name]?.version !== version)
    .map(([name]) => name)
}

/**
 * @param {string} file a lock file, npm's own list of what it installed being one too
 * @returns {Record<string, { version?: string, optional?: boolean }>}
 */
function readPackages(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')).packages : {}
}

/**
 * @param {string} entry file or folder
 * @returns {number}
 */
function newestMs(entry) {
  if (!existsSync(entry)) return 0
  const { mtimeMs } = statSync(entry)
  if (!statSync(entry).isDirectory()) return mtimeMs
  // A folder's own time changes when a file in it is added or removed.
  return readdirSync(entry).reduce(
    (newest, name) => Math.max(newest, newestMs(path.join(entry, name))),
    mtimeMs,
  )
}
