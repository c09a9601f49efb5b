// A static file server for the built app, on this machine only.
import { createReadStream, existsSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { createServer } from 'node:http'
import path from 'node:path'
import { headersFor, parseHeaders } from './headers.mjs'

/** @type {Record<string, string>} */
const TYPES = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
  '.stl': 'model/stl',
  '.obj': 'model/obj',
  '.3mf': 'model/3mf',
  '.zip': 'application/zip',
}

/**
 * Answers GET and HEAD for the files of `folder`, with the headers its `_headers` file asks for.
 * Nothing outside the folder is ever read, whatever the request or a link inside it says.
 *
 * @param {string} folder
 */
export function createAppServer(folder) {
  const root = realpathSync(folder)
  const headersFile = path.join(root, '_headers')
  const rules = existsSync(headersFile) ? parseHeaders(readFileSync(headersFile, 'utf8')) : []

  return createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end()
      return
    }
    const pathname = readPathname(request.url ?? '/')
    const file = pathname === null ? null : resolveInside(root, pathname)
    if (pathname === null || file === null) {
      response.writeHead(404, { 'Content-Type': 'text/plain; charset=utf-8' }).end('Not found\n')
      return
    }
    response.writeHead(200, {
      'Content-Type': TYPES[path.extname(file).toLowerCase()] ?? 'application/octet-stream',
      'Content-Length': statSync(file).size,
      'Cache-Control': 'no-cache',
      ...headersFor(rules, pathname),
    })
    if (request.method === 'HEAD') {
      response.end()
      return
    }
    createReadStream(file)
      .on('error', () => response.destroy())
      .pipe(response)
  })
}

/**
 * Starts listening on 127.0.0.1, on the wanted port or, where that one is taken, on any free one.
 *
 * @param {import('node:http').Server} server
 * @param {number} wantedPort 0 for any free one
 * @returns {Promise<number>} the port
 */
export function listen(server, wantedPort) {
  return new Promise((resolve, reject) => {
    const onError = (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code === 'EADDRINUSE' && wantedPort !== 0) resolve(listen(server, 0))
      else reject(error)
    }
    server.once('error', onError)
    server.listen(wantedPort, '127.0.0.1', () => {
      server.off('error', onError)
      const address = server.address()
      if (address === null || typeof address === 'string') reject(new Error('no port'))
      else resolve(address.port)
    })
  })
}

/**
 * @param {string} url
 * @returns {string | null} decoded path, null when it cannot be decoded
 */
function readPathname(url) {
  try {
    const pathname = decodeURIComponent(new URL(url, 'http://localhost').pathname)
    return pathname.includes('\0') ? null : pathname
  } catch {
    return null
  }
}

/**
 * @param {string} root
 * @param {string} pathname
 * @returns {string | null} an existing file inside `root`, null for anything else
 */
function resolveInside(root, pathname) {
  const wanted = path.join(root, pathname.endsWith('/') ? `${pathname}index.html` : pathname)
  if (!existsSync(wanted)) return null
  const file = realpathSync(wanted)
  return file.startsWith(root + path.sep) && statSync(file).isFile() ? file : null
}
