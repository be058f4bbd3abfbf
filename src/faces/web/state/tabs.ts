/** Who may write: the tab that holds the craft's lock. The others follow what it saves. */
export type Role = 'writer' | 'follower'

type Message = { say: 'saved'; time: number } | { say: 'hand over' }

export interface TabEvents {
  /** this tab may write from now on */
  granted(): void
  /** another tab holds the craft; this one follows it */
  following(): void
  /** another tab took the craft; unsaved work must be put aside now */
  lost(): void
  /** another tab saved a newer text */
  saved(time: number): void
  /** another tab asks for the craft: save first, then it is let go */
  askedToHandOver(): Promise<void>
}

export interface Tabs {
  /** true while this tab has the lock, or where there are no locks */
  holds(): boolean
  tellSaved(time: number): void
  takeOver(): void
  close(): void
}

/** how long a tab may take to hand over before the lock is taken from it (it may be frozen or crashed) */
const patience = 1500

/**
 * Joins the tabs that have this craft open. One of them holds the lock `wakewright:ID`; a second waits for it, and gets it
 * when the first closes, hands over, or does not answer in time. Where the browser has no locks, every tab writes.
 */
export function joinTabs(craftId: string, events: TabEvents): Tabs {
  const name = `wakewright:${craftId}`
  const channel = 'BroadcastChannel' in globalThis ? new BroadcastChannel(name) : undefined
  const locks = 'locks' in navigator ? navigator.locks : undefined
  let left = false
  let waiting: AbortController | undefined
  let letGo: (() => void) | undefined
  let stealing: ReturnType<typeof setTimeout> | undefined

  const hold = () => {
    clearTimeout(stealing)
    events.granted()
    return new Promise<void>((resolve) => (letGo = resolve))
  }

  /** queues for the lock, or takes it from whoever has it; one request of this tab at a time */
  const request = (steal: boolean) => {
    waiting?.abort()
    const own = new AbortController()
    waiting = own
    // a lock that is taken from this tab, or let go, comes back here
    const ended = (tell: () => void) => {
      if (left || own.signal.aborted) return
      letGo = undefined
      tell()
      request(false)
    }
    locks
      ?.request(name, steal ? { steal } : { signal: own.signal }, hold)
      .then(() => ended(events.following))
      .catch(() => ended(events.lost))
  }

  if (locks) {
    void locks.query().then(({ held }) => {
      if (left) return
      if (held?.some((lock) => lock.name === name)) events.following()
      request(false)
    })
  } else events.granted()

  channel?.addEventListener('message', ({ data }: MessageEvent<Message>) => {
    if (data.say === 'saved') events.saved(data.time)
    else if (letGo) void events.askedToHandOver().then(() => letGo?.())
  })

  return {
    holds: () => !locks || letGo !== undefined,
    tellSaved: (time) => channel?.postMessage({ say: 'saved', time } satisfies Message),
    takeOver() {
      channel?.postMessage({ say: 'hand over' } satisfies Message)
      stealing = setTimeout(() => !letGo && request(true), patience)
    },
    close() {
      clearTimeout(stealing)
      left = true
      waiting?.abort()
      letGo?.()
      channel?.close()
    },
  }
}
