import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'

/**
 * Builds the app into a folder of its own; throws with what the bundler says where it does not
 * build.
 */
export function buildApp(folder: string): string {
  const build = join(folder, 'app')
  const vite = ['node_modules/vite/bin/vite.js', 'build', '--outDir', build, '--logLevel', 'warn']
  const env = { ...process.env, NODE_ENV: 'production' }
  const built = spawnSync(process.execPath, vite, { encoding: 'utf8', env })
  if (built.status !== 0) throw new Error(`The app does not build:\n${built.stderr}`)
  return build
}

/**
 * What a first visit loads before the page can be used, gzipped, kB: the scripts and style sheets
 * index.html names.
 */
export function shellKb(build: string): number {
  const html = readFileSync(join(build, 'index.html'), 'utf8')
  const files = [...html.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)].map(
    ([, file]) => file ?? '',
  )
  return (
    files.reduce((sum, file) => sum + gzipSync(readFileSync(join(build, file))).length, 0) / 1000
  )
}
