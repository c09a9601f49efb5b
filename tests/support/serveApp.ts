import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { TestProject } from 'vitest/node'
import { createAppServer, listen } from '../../src/tools/serve.mjs'
import { serveProfile } from './serveProfile.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the built app is served during this run. */
    appUrl: string
    /** The folder that holds it. */
    appFolder: string
    /** Where a profile that has counted the sample is handed out. */
    profileUrl: string
  }
}

/**
 * Builds the app once a run and serves it. `PREWEIGH_DIST` names a build to take instead, as `npm
 * test` does with the one it has just made.
 */
export default async function serveApp(project: TestProject): Promise<() => void> {
  const given = process.env['PREWEIGH_DIST']
  const folder = given ?? buildInto(project.config.root)
  const server = createAppServer(folder)
  const port = await listen(server, 0)
  const appUrl = `http://127.0.0.1:${port}/`
  const profiles = serveProfile(appUrl)
  project.provide('appUrl', appUrl)
  project.provide('profileUrl', `http://127.0.0.1:${await listen(profiles, 0)}/`)
  project.provide('appFolder', folder)
  return () => {
    for (const each of [server, profiles]) {
      each.close()
      each.closeAllConnections()
    }
    if (given === undefined) rmSync(folder, { recursive: true, force: true })
  }
}

function buildInto(root: string): string {
  // Outside of node_modules: the source maps tell by that name which package a line of code is of.
  const folder = mkdtempSync(path.join(tmpdir(), 'preweigh-app-'))
  // A process of its own: this one runs with NODE_ENV=test, which would build React's slow
  // development version.
  const result = spawnSync(
    process.execPath,
    ['node_modules/vite/bin/vite.js', 'build', '--outDir', folder, '--logLevel', 'warn'],
    { cwd: root, encoding: 'utf8', env: { ...process.env, NODE_ENV: 'production' } },
  )
  if (result.status !== 0) {
    rmSync(folder, { recursive: true, force: true })
    throw new Error(`The app does not build:\n${result.stdout}\n${result.stderr}`)
  }
  return folder
}
