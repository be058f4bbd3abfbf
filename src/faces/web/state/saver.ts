import { Overtaken, type Store } from './saved.ts'
import type { AppStore } from './store.ts'
import type { Work } from './work.ts'

/**
 * milliseconds that what was typed waits at most, pause or no pause; the first change after a quiet spell is written at once. With the wait of a field
 * that is still being typed in, no more than three tenths of a second of typing is ever unwritten.
 */
const longest = 120

export interface Saver {
  /** writes what is not written yet, now */
  save(): Promise<void>
  /** puts a work on the bench; `time` is that of its newest snapshot, 0 when it was never saved */
  show(work: Work, time: number): void
  /** shows the newest snapshot of the craft on the bench, when it is not the one shown */
  reload(): Promise<void>
  /** shows what another tab saved, unless something of this tab is still to be written */
  follow(): void
  /** another tab took the craft: what is not written goes aside */
  overtaken(): void
}

/** Writes the store's work to the browser's shelf as it changes, while this tab is the one that may. */
export function createSaver(
  store: AppStore,
  shelf: Store | undefined,
  clock: () => number,
  tabs: { holds(): boolean; tellSaved(time: number): void },
): Saver {
  let savedWork: Work | undefined
  let savedAt = 0
  let seen: Work | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  let queue: Promise<void> = Promise.resolve()

  /** saves queue behind each other, so the last one written is the last one typed */
  const write = () => (queue = queue.then(writeNewest))

  const writeNewest = async () => {
    const { work, role } = store.get()
    if (!work || role !== 'writer' || !shelf) return
    if (work === savedWork) return store.set({ saving: 'saved' })
    try {
      savedAt = await shelf.save(work, clock(), savedAt)
      savedWork = work
      tabs.tellSaved(savedAt)
      if (store.get().work === work) store.set({ saving: 'saved' })
    } catch (error) {
      if (error instanceof Overtaken) return tabs.holds() ? standUp(work) : yieldTo(work)
      const why = (error as Error).message
      store.set({
        saving: 'failed',
        notice: `This browser could not keep the change (${why}). Save the craft to a file.`,
      })
    }
  }

  /** keeps a work as a craft of its own, so that it is not lost to the one that stays */
  const putAside = async (work: Work) => {
    const fileName = work.fileName.replace(/(\.\w+)?$/, ' (other tab)$1')
    await shelf?.save({ ...work, id: crypto.randomUUID(), fileName }, clock(), 0).catch(() => {})
  }

  /** a tab that woke up late wrote although this one holds the craft: its text goes aside, this one's stays */
  const standUp = async (work: Work) => {
    const theirs = await shelf?.newest(work.id)
    if (!theirs) return
    savedAt = theirs.time
    if (theirs.work.text !== work.text) {
      await putAside(theirs.work)
      store.set({ notice: 'Another tab wrote to this craft too. What it had is kept as a craft of its own.' })
    }
    await writeNewest()
  }

  /** puts what only this tab has aside, and shows what the other tab saved */
  const yieldTo = async (work: Work) => {
    const own = work !== savedWork
    if (own) await putAside(work)
    savedWork = work
    const aside = own
      ? 'What only this tab had is kept as a craft of its own.'
      : 'This one shows what that tab saves.'
    store.set({ role: 'follower', notice: `Another tab took this craft over. ${aside}` })
    await reload()
  }

  const show = (work: Work, time: number) => {
    savedAt = time
    savedWork = time === 0 ? undefined : work
    store.setWork(work)
    // reading the text may have completed the work; that is nothing to save
    if (time !== 0) savedWork = store.get().work
  }

  const reload = async () => {
    const { work } = store.get()
    const snapshot = work && (await shelf?.newest(work.id))
    if (!snapshot || store.get().work?.id !== snapshot.craftId || snapshot.time === savedAt) return
    show(snapshot.work, snapshot.time)
    store.set({ saving: 'saved' })
  }

  const save = () => {
    clearTimeout(timer)
    timer = undefined
    return write()
  }

  store.subscribe(() => {
    const { work, role, saving } = store.get()
    if (!work || work === savedWork || work === seen || role !== 'writer') return
    seen = work
    const first = timer === undefined
    // typing on does not put the write off
    timer ??= setTimeout(save, longest)
    if (saving === 'saved') store.set({ saving: 'pending' })
    if (first) void write()
  })

  return {
    save,
    show,
    reload,
    follow() {
      if (store.get().role === 'follower' || store.get().work === savedWork) void reload()
    },
    overtaken() {
      const { work } = store.get()
      // behind any save under way, which finds for itself that it was overtaken
      queue = queue.then(() => (work && store.get().role === 'writer' ? yieldTo(work) : undefined))
    },
  }
}
