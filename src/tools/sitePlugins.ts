import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import type { Plugin } from 'vite'
import { parseHeaders, policyForMeta } from './headers.mjs'

/**
 * Writes the content policy of public/_headers into the built page too, for hosts that send no
 * headers.
 */
export function policyPlugin(): Plugin {
  let publicDir = ''
  return {
    name: 'preweigh-policy',
    apply: 'build',
    configResolved(config) {
      publicDir = config.publicDir
    },
    transformIndexHtml() {
      const rules = parseHeaders(readFileSync(path.join(publicDir, '_headers'), 'utf8'))
      const content = policyForMeta(rules)
      return [
        {
          tag: 'meta',
          attrs: { 'http-equiv': 'Content-Security-Policy', content },
          injectTo: 'head-prepend',
        },
      ]
    },
  }
}

/**
 * Makes the built app open without a network: a service worker that keeps every file of the build.
 */
export function offlinePlugin(): Plugin {
  const source = (name: string) => readFileSync(new URL(`offline/${name}`, import.meta.url), 'utf8')
  let outDir = ''
  return {
    name: 'preweigh-offline',
    apply: 'build',
    configResolved(config) {
      outDir = path.resolve(config.root, config.build.outDir)
    },
    transformIndexHtml() {
      return [
        {
          tag: 'link',
          attrs: { rel: 'manifest', href: './manifest.webmanifest' },
          injectTo: 'head',
        },
        { tag: 'script', attrs: { type: 'module', src: './offline.js' }, injectTo: 'body' },
      ]
    },
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'offline.js', source: source('register.js') })
    },
    // Last of all: the files of public/ have been copied by then, and a build that failed does not
    // come here.
    writeBundle: {
      order: 'post',
      sequential: true,
      handler() {
        const files = listFiles(outDir).filter(isKept)
        const worker = fillIn(source('worker.js'), files, hashOf(outDir, files))
        writeFileSync(path.join(outDir, 'sw.js'), worker)
      },
    },
  }
}

function isKept(file: string): boolean {
  return !file.endsWith('.map') && file !== '_headers' && file !== 'sw.js'
}

function fillIn(worker: string, files: readonly string[], version: string): string {
  return worker
    .replace("'__VERSION__'", JSON.stringify(version))
    .replace("['__FILES__']", JSON.stringify(files))
}

function hashOf(folder: string, files: readonly string[]): string {
  const hash = createHash('sha256')
  for (const file of files)
    hash
      .update(file)
      .update('\0')
      .update(readFileSync(path.join(folder, file)))
  return hash.digest('hex').slice(0, 16)
}

/** Paths inside `folder`, sorted, with forward slashes. */
function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .map((file) => file.split(path.sep).join('/'))
    .toSorted()
}
