import { type Problem, readText } from './craftFile.ts'
import type { OpenedFile } from './openedFiles.ts'
import type { Store } from './saved.ts'
import { createSaver } from './saver.ts'
import type { AppStore } from './store.ts'
import { joinTabs, type Tabs } from './tabs.ts'
import { newWork, type Work } from './work.ts'

/** What is on the bench: opens and puts away crafts, keeps them, and shares each with the other tabs that have it. */
export function startSession(store: AppStore, shelf: Store | undefined, clock: () => number) {
  let tabs: Tabs | undefined
  const saver = createSaver(store, shelf, clock, {
    holds: () => tabs?.holds() ?? true,
    tellSaved: (time) => tabs?.tellSaved(time),
  })
  const { save } = saver

  const granted = async () => {
    const followed = store.get().role === 'follower'
    if (followed) await saver.reload()
    store.set({ role: 'writer', ...(followed ? { notice: 'This tab keeps the craft now.' } : {}) })
    void save()
  }
  const following = () => {
    const notice = 'This craft is open in another tab. This one shows what that tab saves.'
    store.set({ role: 'follower', notice })
    void saver.reload()
  }

  const show = (work: Work, time: number) => {
    tabs?.close()
    sessionStorage.setItem('craft', work.id)
    store.set({ role: 'writer' })
    saver.show(work, time)
    tabs = joinTabs(work.id, {
      granted,
      following,
      lost: saver.overtaken,
      saved: saver.follow,
      askedToHandOver: save,
    })
  }

  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && save())
  addEventListener('pagehide', () => void save())

  /** puts a text on the bench as a craft of its own */
  const openText = async (text: string, fileName: string) => {
    await save()
    show(newWork(crypto.randomUUID(), fileName, text), 0)
  }
  /** opens a craft kept in this browser; false when it is not there */
  const openKept = async (craftId: string): Promise<boolean> => {
    await save()
    const snapshot = await shelf?.newest(craftId)
    if (snapshot) show(snapshot.work, snapshot.time)
    return snapshot !== undefined
  }

  return {
    openText,
    openKept,
    /** problems that keep a file from being opened; empty when it was opened */
    async openFile(file: OpenedFile): Promise<readonly Problem[]> {
      if (file.fault) return [atTop(file.name, file.fault)]
      const reading = readText(file.text, file.name)
      if (!reading.craft) return reading.problems
      const kept = await keptWith(shelf, file.text)
      if (!kept || !(await openKept(kept))) await openText(file.text, file.name)
      return []
    },
    takeOver: () => tabs?.takeOver(),
    /** clears the bench; what was on it stays on the shelf */
    async close() {
      await save()
      tabs?.close()
      tabs = undefined
      sessionStorage.removeItem('craft')
      store.setWork(undefined)
    },
  }
}

/** The craft of this browser whose newest text is exactly this one, so that opening a file twice does not make two. */
async function keptWith(shelf: Store | undefined, text: string): Promise<string | undefined> {
  for (const { craftId } of (await shelf?.list()) ?? [])
    if ((await shelf?.newest(craftId))?.work.text === text) return craftId
  return undefined
}

/** A problem of the file as a whole. */
const atTop = (file: string, says: string): Problem => ({
  ...{ file, line: 1, column: 1, path: '', found: says, expected: 'a craft file', says },
  severity: 'error',
})

export type Session = ReturnType<typeof startSession>
