import { useEffect, useRef } from 'react'
import { sidePages } from '../pages/registry.ts'
import { TryStrip } from '../parts/TryStrip.tsx'
import { useApp } from '../state/hooks.ts'
import { BenchPage } from './BenchPage.tsx'
import { Notices } from './Notices.tsx'
import { PageView } from './PageView.tsx'
import { useRoute } from './pageRoute.ts'
import { TopBar, Words } from './TopBar.tsx'
import { useFileDrop } from './useFileDrop.ts'
import { useUndoKeys } from './useUndoKeys.ts'

/** The frame round every page: name and words on top, notices, the page, and what is being tried at the foot. */
export function App() {
  const ready = useApp((s) => s.ready)
  const hasCraft = useApp((s) => s.work !== undefined)
  const dropping = useFileDrop()
  useUndoKeys()
  const route = useRoute()
  useFocusOnOpening()
  const aside = sidePages.some((p) => p.id === route.page)
  return (
    <div className={dropping ? 'dropping' : ''}>
      <button type="button" className="skip" onClick={toPage}>
        To the answer
      </button>
      <TopBar />
      <Words />
      <Notices />
      <main id="page" tabIndex={-1}>
        {ready && (hasCraft || aside ? <PageView /> : <BenchPage />)}
      </main>
      <TryStrip />
    </div>
  )
}

/** A craft that is opened takes the keyboard to its page: the button that opened it is gone. */
function useFocusOnOpening(): void {
  const id = useApp((s) => s.work?.id)
  const ready = useApp((s) => s.ready)
  const before = useRef<{ id: string | undefined }>(undefined)
  useEffect(() => {
    if (!ready) return
    // the craft that is there from the start opens nothing
    if (before.current && before.current.id !== id) toPage()
    before.current = { id }
  }, [id, ready])
}

// the hash is the route, so this moves the keyboard itself instead of being a link
function toPage() {
  document.getElementById('page')?.focus()
}
