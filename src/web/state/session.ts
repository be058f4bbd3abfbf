import { type Problem, readText } from './craftFile.ts'
import type { OpenedFile } from './files.ts'
import { Overtaken, type Store } from './saved.ts'
import type { AppStore } from './store.ts'
import { joinTabs, type Tabs } from './tabs.ts'
import { newWork, type Work } from './work.ts'

/** milliseconds of quiet before what was typed is written; the first change after a quiet spell is written at once */
const quiet = 300

/** Keeps the store's work in the browser, holds its lock, and follows another tab when that one holds it. */
export function startSession(store: AppStore, shelf: Store | undefined, clock: () => number) {
  let tabs: Tabs | undefined
  let savedWork: Work | undefined
  let savedAt = 0
  let timer: ReturnType<typeof setTimeout> | undefined
  let running: Promise<void> = Promise.resolve()

  /** writes the newest work; saves queue behind each other, so the last one written is the last one typed */
  const write = (): Promise<void> => {
    running = running.then(async () => {
      const { work, role } = store.get()
      if (!work || work === savedWork || role !== 'writer' || !shelf) return
      try {
        savedAt = await shelf.save(work, clock(), savedAt)
        savedWork = work
        tabs?.tellSaved(savedAt)
        if (store.get().work === work) store.set({ saving: 'saved' })
      } catch (error) {
        if (error instanceof Overtaken) return yieldTo(work)
        store.set({
          saving: 'failed',
          notice: `This browser could not keep the change (${(error as Error).message}). Save the craft to a file.`,
        })
      }
    })
    return running
  }
  /** puts what only this tab has on the shelf as a craft of its own, and shows what the other tab saved */
  const yieldTo = async (work: Work) => {
    const own = work !== savedWork
    if (own && shelf) {
      const name = work.fileName.replace(/(\.\w+)?$/, ' (other tab)$1')
      await shelf.save({ ...work, id: crypto.randomUUID(), fileName: name }, clock(), 0).catch(() => {})
    }
    savedWork = work
    const aside = own
      ? ' What only this tab had is kept as a craft of its own.'
      : ' This one shows what that tab saves.'
    store.set({ role: 'follower', notice: `Another tab took this craft over.${aside}` })
    await reload(work.id)
  }
  const save = () => {
    clearTimeout(timer)
    timer = undefined
    return write()
  }

  const reload = async (craftId: string) => {
    const snapshot = await shelf?.newest(craftId)
    if (!snapshot || store.get().work?.id !== craftId || snapshot.time === savedAt) return
    savedAt = snapshot.time
    savedWork = snapshot.work
    store.setWork(snapshot.work)
    savedWork = store.get().work
    store.set({ saving: 'saved' })
  }

  const join = (craftId: string) => {
    tabs?.close()
    store.set({ role: 'writer' })
    tabs = joinTabs(craftId, {
      granted: async () => {
        const followed = store.get().role === 'follower'
        if (followed) await reload(craftId)
        store.set({ role: 'writer', ...(followed ? { notice: 'This tab keeps the craft now.' } : {}) })
        void save()
      },
      following: () => {
        store.set({
          role: 'follower',
          notice: 'This craft is open in another tab. This one shows what that tab saves.',
        })
        void reload(craftId)
      },
      lost: () => {
        const { work } = store.get()
        // behind any save under way, which finds for itself that it was overtaken
        running = running.then(() => (work && store.get().role === 'writer' ? yieldTo(work) : undefined))
      },
      saved: (time) => {
        if (time !== savedAt && store.get().role === 'follower') void reload(craftId)
      },
      askedToHandOver: save,
    })
  }

  let seen: Work | undefined
  store.subscribe(() => {
    const { work, role, saving } = store.get()
    if (!work || work === savedWork || work === seen || role !== 'writer') return
    seen = work
    const first = timer === undefined
    clearTimeout(timer)
    timer = setTimeout(save, quiet)
    if (saving === 'saved') store.set({ saving: 'pending' })
    if (first) void write()
  })
  const leave = () => void save()
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && leave())
  addEventListener('pagehide', leave)

  const show = (work: Work, saved: boolean, time = 0) => {
    savedAt = time
    sessionStorage.setItem('craft', work.id)
    savedWork = undefined
    join(work.id)
    if (saved) savedWork = work
    store.setWork(work)
    if (saved) savedWork = store.get().work
  }

  return {
    save,
    /** puts a text on the bench as a craft of its own */
    openText(text: string, fileName: string) {
      show(newWork(crypto.randomUUID(), fileName, text), false)
    },
    /** opens a craft kept in this browser; false when it is not there */
    async openKept(craftId: string): Promise<boolean> {
      await save()
      const snapshot = await shelf?.newest(craftId)
      if (!snapshot) return false
      show(snapshot.work, true, snapshot.time)
      return true
    },
    /** problems that keep a file from being opened; empty when it was opened */
    async openFile(file: OpenedFile): Promise<readonly Problem[]> {
      if (file.fault) return [atTop(file.name, file.fault)]
      const reading = readText(file.text, file.name)
      if (!reading.craft) return reading.problems
      await save()
      const kept = await keptWith(shelf, file.text)
      if (!kept || !(await this.openKept(kept))) this.openText(file.text, file.name)
      return []
    },
    takeOver: () => tabs?.takeOver(),
    close() {
      tabs?.close()
      tabs = undefined
      sessionStorage.removeItem('craft')
      savedWork = undefined
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
