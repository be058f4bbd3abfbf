import { useEffect, useRef, useState } from 'react'
import type { BookBox } from '../../../../../book/bookBoxes.ts'
import type { PaperName } from '../../../../../drawing/papers.ts'
import { app } from '../../../state/app.ts'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { hullFilesOf } from '../../../state/hullFiles.ts'
import { useLogText } from '../../../state/logs.ts'
import { saveFile } from '../../../state/openedFiles.ts'
import { openStore } from '../../../state/saved.ts'
import { callJob } from '../../../work/call.ts'
import { bookLetters } from './bookLetters.ts'

/** The book that was made last of a craft: its boxes are what a reader has on paper. */
export interface LastBook {
  date: string
  pages: number
  boxes: readonly BookBox[]
}

export interface BookWork {
  last: LastBook | undefined
  busy?: { part?: number; says: string }
  fault?: string
  make(as: 'pdf' | 'zip', paper: PaperName): void
  cancel(): void
}

const key = (craftId: string) => `book ${craftId}`
const today = () => new Date().toISOString().slice(0, 10)

/** Makes the book of a craft in a worker, and keeps what boxes it has. */
export function useBook(craft: Craft): BookWork {
  const units = useApp((s) => s.units)
  const text = useApp((s) => s.work?.text ?? '')
  const craftId = useApp((s) => s.work?.id)
  const log = useLogText(craftId)
  const [last, setLast] = useState<LastBook>()
  const [busy, setBusy] = useState<BookWork['busy']>()
  const [fault, setFault] = useState<string>()
  const cancel = useRef(() => {})
  useEffect(() => {
    if (!craftId) return
    let here = true
    const read = async () => (await openStore()).setting<LastBook>(key(craftId))
    // a browser that keeps nothing still makes books
    read().then(
      (kept) => here && setLast(kept),
      () => {},
    )
    return () => {
      here = false
      cancel.current()
    }
  }, [craftId])
  const make = async (as: 'pdf' | 'zip', paper: PaperName) => {
    setFault(undefined)
    setBusy({ says: 'Fetching letters' })
    const date = today()
    try {
      const fonts = await bookLetters()
      const { files } = hullFilesOf(craft)
      const order = { text, log, units, paper, date, fonts, as, ...(files ? { files } : {}) }
      const call = callJob('book', order, (part, says) => setBusy({ part, says }))
      cancel.current = call.cancel
      const { bytes, pages, boxes } = await call.done
      const made = { date, pages, boxes }
      setLast(made)
      if (craftId) await (await openStore()).setSetting(key(craftId), made).catch(() => {})
      await saveFile(`${nameOf(craft)}-book.${as}`, bytes)
      app.say(`The book of ${craft.name}: ${pages} pages.`)
    } catch (error) {
      if ((error as Error).name !== 'AbortError') setFault((error as Error).message)
    } finally {
      setBusy(undefined)
      cancel.current = () => {}
    }
  }
  return {
    last,
    ...(busy ? { busy } : {}),
    ...(fault === undefined ? {} : { fault }),
    make: (as, paper) => void make(as, paper),
    cancel: () => cancel.current(),
  }
}

const nameOf = (craft: Craft) => craft.name.toLowerCase().replace(/[^a-z0-9]+/g, '-') || 'craft'
