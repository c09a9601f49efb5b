import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Server } from 'node:http'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { createAppServer, listen } from '../../src/tools/serve.mjs'

let outside = ''
let server: Server
let port = 0

beforeAll(async () => {
  outside = mkdtempSync(path.join(tmpdir(), 'preweigh-serve-'))
  writeFileSync(path.join(outside, 'secret.txt'), 'secret')
  const site = path.join(outside, 'site')
  mkdirSync(path.join(site, 'assets'), { recursive: true })
  writeFileSync(path.join(site, 'index.html'), '<title>here</title>')
  writeFileSync(path.join(site, 'assets', 'a b.js'), 'export {}')
  writeFileSync(path.join(site, 'assets', 'm.wasm'), 'x')
  writeFileSync(path.join(site, '_headers'), '/*\n  X-Tried: yes\n')
  symlinkSync(path.join(outside, 'secret.txt'), path.join(site, 'link.txt'))
  server = createAppServer(site)
  port = await listen(server, 0)
})

afterAll(() => {
  server.close()
  rmSync(outside, { recursive: true, force: true })
})

/** Sends the path as it stands; `fetch` would tidy it first. */
function rawStatus(target: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => {
      socket.end(`GET ${target} HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n`)
    })
    let answer = ''
    socket.on('data', (chunk) => (answer += String(chunk)))
    socket.on('end', () => resolve(answer))
    socket.on('error', reject)
  })
}

test('the root gives the page, with its type and the headers of _headers', async () => {
  const answer = await fetch(`http://127.0.0.1:${port}/`)
  expect(await answer.text()).toBe('<title>here</title>')
  expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8')
  expect(answer.headers.get('x-tried')).toBe('yes')
})

test('scripts and wasm get the types that browsers insist on', async () => {
  const script = await fetch(`http://127.0.0.1:${port}/assets/a%20b.js?x=1`)
  expect(script.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
  const wasm = await fetch(`http://127.0.0.1:${port}/assets/m.wasm`, { method: 'HEAD' })
  expect(wasm.headers.get('content-type')).toBe('application/wasm')
  expect(wasm.headers.get('content-length')).toBe('1')
})

test.each([
  '/../secret.txt',
  '/%2e%2e/secret.txt',
  '/..%2fsecret.txt',
  '/assets/..%2f..%2fsecret.txt',
  '/link.txt',
  '/%00',
  '/%',
  '/assets',
  '/nothing',
])('%s is not found, and nothing outside the folder is read', async (target) => {
  const answer = await rawStatus(target)
  expect(answer).toContain(' 404 ')
  expect(answer).not.toContain('secret')
})

test('only reading is allowed', async () => {
  const answer = await fetch(`http://127.0.0.1:${port}/`, { method: 'POST' })
  expect(answer.status).toBe(405)
})

test('a taken port gives way to a free one', async () => {
  const second = createAppServer(outside)
  const other = await listen(second, port)
  second.close()
  expect(other).not.toBe(port)
})
