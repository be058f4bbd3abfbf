import { useEffect, useRef } from 'react'
import { Button } from 'react-aria-components/Button'
import { type Standing, worstStanding } from '../../../base/answers/finding.ts'
import { pagesFor, sidePages } from '../pages/registry.ts'
import { StandingMark } from '../parts/StandingMark.tsx'
import { useNotYours } from '../parts/useNotYours.ts'
import { app } from '../state/app.ts'
import { hasErrors, type Problem } from '../state/craftFile.ts'
import { useApp } from '../state/hooks.ts'
import { FileMenu } from './FileMenu.tsx'
import { useRoute } from './pageRoute.ts'

const saves = { saved: 'kept in this browser', pending: 'keeping…', failed: 'not kept' } as const

/** Name, craft, undo and files, and the words that lead to the pages, each with its worst finding. */
export function TopBar() {
  const work = useApp((s) => s.work)
  const craftName = useApp((s) => s.craft?.name)
  const saving = useApp((s) => s.saving)
  const follower = useApp((s) => s.role === 'follower')
  return (
    <header className="top">
      <div className="who">
        <p className="brand">
          <Mark />
          Wakewright
        </p>
        {!work && <SideLinks />}
        {work && (
          <>
            <span className="craftname">{craftName ?? work.fileName}</span>
            <span className="savemark" data-saving={follower ? 'follower' : saving}>
              {follower ? 'kept by another tab' : saves[saving]}
            </span>
            <div className="tools">
              <SideLinks />
              <Button
                className="plain"
                isDisabled={work.past.length === 0 || follower}
                onPress={() => app.undo()}
              >
                Undo
              </Button>
              <Button
                className="plain"
                isDisabled={work.future.length === 0 || follower}
                onPress={() => app.redo()}
              >
                Redo
              </Button>
              <FileMenu />
            </div>
          </>
        )}
      </div>
    </header>
  )
}

/** links to the pages that need no craft */
function SideLinks() {
  return sidePages
    .filter((page) => page.linked !== false)
    .map((page) => (
      <a key={page.id} href={`#/${page.id}`} title={page.asks}>
        {page.word}
      </a>
    ))
}

/** The words across the top, in one row that stays in sight; each with the mark of its worst finding. */
export function Words() {
  const route = useRoute()
  const hasCraft = useApp((s) => s.work !== undefined)
  const findings = useApp((s) => s.findings)
  const file = useApp((s) => fileStanding(s.problems))
  const notYours = useNotYours()
  const here = useRef<HTMLAnchorElement>(null)
  // on a narrow window the row scrolls: the page that is open has its word in sight
  useEffect(() => {
    if (!route.page || !hasCraft) return
    const show = () => here.current?.scrollIntoView({ block: 'nearest', inline: 'center' })
    show()
    addEventListener('resize', show)
    return () => removeEventListener('resize', show)
  }, [route.page, hasCraft])
  if (!hasCraft) return null
  return (
    <nav className="wordrow" aria-label="Questions">
      <ul className="words">
        {pagesFor(Object.keys(findings)).map((page) => {
          const found = notYours ? undefined : findings[page.id]
          return (
            <li key={page.id}>
              <a
                ref={route.page === page.id ? here : undefined}
                href={`#/${page.id}`}
                title={page.asks}
                aria-current={route.page === page.id ? 'page' : undefined}
              >
                <span className="word">{page.word}</span>
                {page.id === 'craft' && !findings.craft ? (
                  <StandingMark standing={file} word={fileWords[file]} />
                ) : (
                  found && found.length > 0 && <StandingMark standing={worstStanding(found)} />
                )}
              </a>
            </li>
          )
        })}
      </ul>
    </nav>
  )
}

/** How the file itself stands: it reads, it reads with warnings, or it does not. */
function fileStanding(problems: readonly Problem[]): Standing {
  if (hasErrors(problems)) return 'stop'
  return problems.length > 0 ? 'watch' : 'good'
}
const fileWords: Record<Standing, string> = { good: 'reads', watch: 'watch', stop: 'mend', unknown: 'unread' }

/** The sign of the project: a hull over its wake. */
function Mark() {
  return (
    <svg viewBox="0 0 64 64" aria-hidden="true">
      <path d="M8 26h44l-7 12H17z" fill="none" stroke="currentColor" strokeWidth="4" strokeLinejoin="round" />
      <path
        d="M6 49c5-5 9-5 13 0s8 5 13 0 9-5 13 0 8 5 13 0"
        fill="none"
        stroke="var(--accent)"
        strokeWidth="4.5"
        strokeLinecap="round"
      />
    </svg>
  )
}
