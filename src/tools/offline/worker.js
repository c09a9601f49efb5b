// The app's service worker: after one visit it opens without a network. The build fills in the two constants.
const VERSION = '__VERSION__'
const FILES = ['__FILES__']

// Other copies of the app may be served from other folders of the same host: each keeps to its own caches.
const PREFIX = `preweigh ${self.registration.scope} `
const CACHE = PREFIX + VERSION
const PATIENCE_MS = 4000

self.addEventListener('install', (event) => {
  event.waitUntil(keepAll())
})

self.addEventListener('activate', (event) => {
  event.waitUntil(dropOldCaches())
})

self.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || !request.url.startsWith(self.registration.scope)) return
  // Files under assets/ carry a hash of their content in the name, so a kept one is never out of date.
  const isHashed = request.url.startsWith(`${self.registration.scope}assets/`)
  event.respondWith(isHashed ? fromCacheFirst(request) : fromNetworkFirst(request))
})

async function keepAll() {
  const cache = await caches.open(CACHE)
  await cache.addAll(FILES.map((file) => new Request(file, { cache: 'no-cache' })))
}

async function dropOldCaches() {
  const names = await caches.keys()
  const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE)
  await Promise.all(old.map((name) => caches.delete(name)))
}

async function fromCacheFirst(request) {
  return (await fromCache(request)) ?? fetch(request)
}

async function fromNetworkFirst(request) {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE_MS) })
    if (answer.ok) return answer
    return (await fromCache(request)) ?? answer
  } catch {
    return (await fromCache(request)) ?? Response.error()
  }
}

async function fromCache(request) {
  const cache = await caches.open(CACHE)
  const wanted = request.mode === 'navigate' ? 'index.html' : request
  return cache.match(wanted, { ignoreSearch: true })
}
