import { openStore, type Store } from './saved.ts'

/** A run kept in this browser, as the list shows it. */
export interface RunLine {
  id: string
  name: string
  /** ms since 1970 */
  kept: number
  /** s */
  seconds: number
  /** the answer's sentence */
  says: string
  /** true when its sound was kept too */
  sound: boolean
}

let opened: Promise<Store> | undefined
const store = () => (opened ??= openStore())

const listKey = (craftId: string) => `runs ${craftId}`
const runKey = (id: string) => `run ${id}`

/** Runs of a craft, newest first. */
export const listRuns = async (craftId: string): Promise<readonly RunLine[]> =>
  (await (await store()).setting<RunLine[]>(listKey(craftId))) ?? []

/** Changes a craft's list; two tabs never do so at once. */
async function changeList(craftId: string, by: (list: readonly RunLine[]) => RunLine[]): Promise<void> {
  const change = async () => (await store()).setSetting(listKey(craftId), by(await listRuns(craftId)))
  if (navigator.locks) await navigator.locks.request(listKey(craftId), change)
  else await change()
}

/** Keeps a run whole; keeping it again takes the place of the earlier one. Rejects when the browser has no room. */
export async function keepRun(craftId: string, line: RunLine, run: unknown): Promise<void> {
  await (await store()).setSetting(runKey(line.id), run)
  await changeList(craftId, (list) => [line, ...list.filter((l) => l.id !== line.id)])
}

export const keptRun = async <T>(id: string): Promise<T | undefined> => (await store()).setting<T>(runKey(id))

export async function forgetRun(craftId: string, id: string): Promise<void> {
  await changeList(craftId, (list) => list.filter((l) => l.id !== id))
  await (await store()).setSetting(runKey(id), undefined)
}
