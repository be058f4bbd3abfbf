import { useSyncExternalStore } from 'react'

/** Where the address points: `#/push`, or `#/craft/jet.rotor.pitch` for one input of a page. */
export interface Route {
  page: string
  path?: string
}

/** Reads an address's hash; an empty or strange one leads to the Craft page. */
export function readRoute(hash: string): Route {
  const [page = '', path] = hash.replace(/^#\/?/, '').split('/')
  if (!path) return { page: page || 'craft' }
  try {
    return { page, path: decodeURIComponent(path) }
  } catch {
    return { page }
  }
}

const listen = (listener: () => void) => {
  addEventListener('hashchange', listener)
  return () => removeEventListener('hashchange', listener)
}
const hash = () => location.hash

export function useRoute(): Route {
  return readRoute(useSyncExternalStore(listen, hash, hash))
}

/** id of the element that holds the input of a craft path */
export const inputId = (path: string) => `in-${path.replace(/[^A-Za-z0-9]+/g, '-')}`

/** Brings the input of a path into view and puts the keyboard on it; false when this page does not show it. */
export function showInput(path: string): boolean {
  const box = document.getElementById(inputId(path))
  if (!box) return false
  for (let parent = box.parentElement; parent; parent = parent.parentElement)
    if (parent instanceof HTMLDetailsElement) parent.open = true
  box.scrollIntoView({ block: 'center' })
  const field = box.querySelector<HTMLElement>('input, select, button')
  field?.focus()
  return field !== null
}

/** id of the element that holds a finding */
export const findingId = (id: string) => inputId(`finding ${id}`)

/** Opens what a finding is folded in and puts the keyboard on it; false when this page does not show it. */
export function showFinding(id: string): boolean {
  const at = document.getElementById(findingId(id))
  if (!at) return false
  for (let parent = at.parentElement; parent; parent = parent.parentElement)
    if (parent instanceof HTMLDetailsElement) parent.open = true
  at.scrollIntoView({ block: 'center' })
  at.focus()
  return true
}

/** The address of an input of a page, or of one of its findings (`finding:` and its id). */
export const addressOf = (page: string, path: string) => `#/${page}/${encodeURIComponent(path)}`

/** Shows what the address names on its page. */
export function showNamed(path: string): boolean {
  const finding = /^finding:(.+)$/.exec(path)?.[1]
  return finding === undefined ? showInput(path) : showFinding(finding)
}
