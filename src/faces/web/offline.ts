/**
 * Registers the service worker of a built app and calls `ready` when a newer build waits to be used.
 * Answers nothing where the browser has none or while developing.
 */
export function keepOffline(ready: (use: () => void) => void): void {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return
  const { serviceWorker } = navigator
  const hadOne = serviceWorker.controller !== null
  let wanted = false
  const offer = (worker: ServiceWorker) =>
    ready(() => {
      wanted = true
      worker.postMessage('take over')
    })
  serviceWorker.addEventListener('controllerchange', () => wanted && location.reload())
  const watch = (registration: ServiceWorkerRegistration) => {
    if (registration.waiting && hadOne) offer(registration.waiting)
    const follow = () => {
      const fresh = registration.installing
      fresh?.addEventListener('statechange', () => fresh.state === 'installed' && hadOne && offer(fresh))
    }
    // the browser may have found the newer build before this was asked
    follow()
    registration.addEventListener('updatefound', follow)
  }
  // a browser may refuse it (private windows do); the app then works as long as it is open
  serviceWorker.register('./sw.js').then(watch, () => {})
}
