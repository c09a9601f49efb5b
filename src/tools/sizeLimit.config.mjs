// What a first visit has to load before the page can be used: the files index.html names itself.
// Chunks that are loaded later (the 3D view, the workers) do not count.
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { DIST } from './project.mjs'

const html = readFileSync(path.join(DIST, 'index.html'), 'utf8')
const named = [...html.matchAll(/(?:src|href)="\.\/([^"]+\.(?:js|css))"/g)].flatMap(([, file]) =>
  file === undefined ? [] : [path.join(DIST, file)],
)
if (!named.some((file) => file.endsWith('.js'))) {
  throw new Error('dist/index.html names no script: nothing to weigh.')
}

export default [{ name: 'shell', path: named, limit: '160 kB', gzip: true }]
