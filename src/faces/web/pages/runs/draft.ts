import { useEffect } from 'react'
import { openStore, type Store } from '../../state/saved.ts'
import { bench, type Recording, type Settings } from './bench.ts'
import { nothingTold, type Told } from './told.ts'

/**
 * The run on the bench, kept while it is worked on, so that a reload or a crash loses nothing: the recording once when it
 * comes and once when it was heard, what is told of it at every change.
 */
let opened: Promise<Store> | undefined
const store = () => (opened ??= openStore())
const runKey = (craftId: string) => `bench ${craftId}`
const toldKey = (craftId: string) => `bench told ${craftId}`

/** bytes of sound that are kept along; a larger file stays where it is on the disk and is opened again by hand */
const MOST_SOUND = 400e6
/** ms that typing may go on before it is kept */
const PAUSE = 150

/** the craft whose run lies on the bench */
let owner: string | undefined

const withoutSound = (r: Recording): Recording => ({ ...r, audio: undefined })

async function keepRecording(craftId: string, recording: Recording | undefined): Promise<void> {
  const s = await store()
  if (!recording) {
    await s.setSetting(runKey(craftId), undefined)
    await s.setSetting(toldKey(craftId), undefined)
    return
  }
  const small = (recording.audio?.size ?? 0) <= MOST_SOUND
  try {
    await s.setSetting(runKey(craftId), small ? recording : withoutSound(recording))
  } catch {
    // no room for the sound: the picture and the numbers are kept at least
    await s.setSetting(runKey(craftId), withoutSound(recording)).catch(() => {})
  }
}

/** Keeps the bench of a craft in this browser, and takes it up again when the page comes back with an empty one. */
export function useDraft(craftId: string | undefined, options: Settings): void {
  useEffect(() => {
    if (!craftId) return
    let gone = false
    let unsubscribe = () => {}
    let timer: ReturnType<typeof setTimeout> | undefined
    let { recording, told } = bench.state()
    const keepTold = () => {
      clearTimeout(timer)
      timer = undefined
      void store().then((s) => s.setSetting(toldKey(craftId), told))
    }
    const look = () => {
      const now = bench.state()
      const heardNow = now.recording?.answer?.hearing !== recording?.answer?.hearing
      if (now.recording?.id !== recording?.id || heardNow) void keepRecording(craftId, now.recording)
      if (now.told !== told && now.recording) {
        clearTimeout(timer)
        timer = setTimeout(keepTold, PAUSE)
      }
      ;({ recording, told } = now)
    }
    const begin = async () => {
      // another craft's run is kept with that craft and waits there
      if (owner !== undefined && owner !== craftId) bench.close()
      owner = craftId
      if (!bench.has()) {
        const s = await store()
        const [kept, said] = [
          await s.setting<Recording>(runKey(craftId)),
          await s.setting<Told>(toldKey(craftId)),
        ]
        if (gone) return
        if (kept && !bench.has()) bench.takeUp(kept, said ?? nothingTold, options)
      }
      if (gone) return
      ;({ recording, told } = bench.state())
      unsubscribe = bench.subscribe(look)
    }
    void begin()
    return () => {
      gone = true
      unsubscribe()
      if (timer !== undefined) keepTold()
    }
  }, [craftId, options])
}
