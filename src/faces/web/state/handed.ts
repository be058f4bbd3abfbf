/** A craft that the computer hands to the phone it let in: its name stands in the address, its text beside the app. */
import type { OpenedFile } from './openedFiles.ts'

/** The file's name in an address's search, `?handed=heron.yaml`; undefined where none is handed. */
export function handedName(search: string): string | undefined {
  const name = new URLSearchParams(search).get('handed')
  return name && /\.ya?ml$/i.test(name) && !/[/\\]/.test(name) ? name : undefined
}

/** Fetches it; throws with what is wrong where it cannot be had. */
export async function fetchHanded(name: string): Promise<OpenedFile> {
  const answer = await fetch(`handed/${encodeURIComponent(name)}`, { cache: 'no-store' })
  if (!answer.ok) throw new Error(`${name} could not be fetched from the computer (${answer.status})`)
  return { name, text: await answer.text() }
}
