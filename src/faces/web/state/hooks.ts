import { startTransition, useEffect, useState, useSyncExternalStore } from 'react'
import { app } from './app.ts'
import type { AppState } from './store.ts'

/** One part of the state; the component draws again only when that part is another object. */
export function useApp<T>(part: (state: AppState) => T): T {
  const snapshot = () => part(app.store.get())
  return useSyncExternalStore(app.store.subscribe, snapshot, snapshot)
}

/**
 * The same for what takes a while to work out and draw: a slider's thumb goes ahead, and the page follows as fast as it can. What
 * is asked for must be the same function at every call.
 */
export function useAppLater<T>(part: (state: AppState) => T): T {
  const [value, setValue] = useState(() => part(app.store.get()))
  useEffect(() => {
    // called, so that a part that is a function is kept and not run
    const follow = () => startTransition(() => setValue(() => part(app.store.get())))
    follow()
    return app.store.subscribe(follow)
  }, [part])
  return value
}

/** the craft with what is tried, and the last look, for `useAppLater` */
export const lookedOf = (state: AppState) => state.looked
export const firstOf = (state: AppState) => state.first
export const triedCraftOf = (state: AppState) => state.triedCraft
