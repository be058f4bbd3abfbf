const worker = self
const prefix = 'wakewright-'
const cacheName = prefix + worker.build.version
const page = new URL('index.html', worker.registration.scope).href
worker.addEventListener('install', (event) => {
  // addAll is all or nothing: a half-fetched build is never used
  event.waitUntil(
    caches
      .open(cacheName)
      .then((cache) => cache.addAll(worker.build.files.map((f) => new Request(f, { cache: 'reload' })))),
  )
})
worker.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names.filter((n) => n.startsWith(prefix) && n !== cacheName).map((n) => caches.delete(n)),
        ),
      )
      .then(() => worker.clients.claim()),
  )
})
// the page asks for this when the user wants the new version now
worker.addEventListener('message', (event) => {
  if (event.data === 'take over') void worker.skipWaiting()
})
worker.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || new URL(request.url).origin !== worker.location.origin) return
  const wanted = request.mode === 'navigate' ? page : request
  event.respondWith(
    caches
      .open(cacheName)
      .then(async (cache) => (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request)),
  )
})

export {}
