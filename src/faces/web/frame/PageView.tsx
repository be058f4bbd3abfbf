import { Component, type ComponentType, lazy, type ReactNode, Suspense, useEffect, useRef } from 'react'
import type { Question } from '../../../base/answers/finding.ts'
import { allPages as questionPages, sidePages } from '../pages/registry.ts'
import { EmptyState } from '../parts/EmptyState.tsx'
import { useApp } from '../state/hooks.ts'
import { addressOf, showNamed, useRoute } from './pageRoute.ts'

const allPages = [...questionPages, ...sidePages]
const views = new Map<string, ComponentType<{ id: Question; asks: string }>>(
  allPages.map((page) => [page.id, lazy(async () => ({ default: await page.load() }))]),
)

/** The page the address names. One that fails shows what failed and leaves the rest of the app working. */
export function PageView() {
  const route = useRoute()
  const unread = useApp((s) => s.work !== undefined && s.craft === undefined)
  const page = allPages.find((p) => p.id === route.page)
  const needsCraft = !sidePages.some((p) => p.id === route.page)
  const View = views.get(route.page)
  useEffect(() => {
    document.title = page ? `${page.word} · Wakewright` : 'Wakewright'
  }, [page])
  useTop(route.page, route.path)
  const { page: at, path } = route
  useEffect(() => {
    if (!path) return
    // the page may still be on its way: try until its inputs are there
    let tries = 0
    const timer = setInterval(() => {
      if (showNamed(path)) return clearInterval(timer)
      if (++tries <= 40) return
      clearInterval(timer)
      // a page shows the inputs that move it most; the form on the Craft page has them all
      if (at !== 'craft' && !path.startsWith('finding:')) location.replace(addressOf('craft', path))
    }, 50)
    return () => clearInterval(timer)
  }, [at, path])
  if (!View || !page)
    return (
      <div className="page">
        <EmptyState
          title="There is no such page"
          says="The address names a page this app does not have; pick one of the words above."
        />
      </div>
    )
  if (unread && needsCraft && page.id !== 'craft')
    return (
      <div className="page">
        <EmptyState
          title="The craft file cannot be read yet"
          says="Nothing can be worked out from it until its problems are mended."
        >
          <p>
            <a href="#/craft">Mend it on the Craft page</a>
          </p>
        </EmptyState>
      </div>
    )
  return (
    <Fence key={page.id}>
      <Suspense fallback={<p className="page quiet">Fetching the page…</p>}>
        <div className="page">
          <View id={page.id as Question} asks={page.asks} />
        </div>
      </Suspense>
    </Fence>
  )
}

/** Another page is read from its top, unless its address names an input. */
function useTop(page: string, path: string | undefined): void {
  const before = useRef(page)
  useEffect(() => {
    if (before.current === page) return
    before.current = page
    if (!path) scrollTo(0, 0)
  }, [page, path])
}

/** Catches what a page throws; React offers this to classes only. */
class Fence extends Component<{ children: ReactNode }, { error?: Error }> {
  override state: { error?: Error } = {}
  static getDerivedStateFromError(error: Error) {
    return { error }
  }
  override render() {
    const { error } = this.state
    if (!error) return this.props.children
    return (
      <div className="page">
        <section className="failed" role="alert">
          <h1>This page failed</h1>
          <p>{error.message}</p>
          <p>Your craft is kept as it was. Undo the last change, or try again.</p>
          {/* a part that could not be fetched is fetched again only by a new start */}
          <button type="button" onClick={() => location.reload()}>
            Try again
          </button>
        </section>
      </div>
    )
  }
}
