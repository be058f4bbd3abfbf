import { useSyncExternalStore } from 'react'
import { app } from './app.ts'
import type { AppState } from './store.ts'

/** One part of the state; the component draws again only when that part is another object. */
export function useApp<T>(part: (state: AppState) => T): T {
  const snapshot = () => part(app.store.get())
  return useSyncExternalStore(app.store.subscribe, snapshot, snapshot)
}
