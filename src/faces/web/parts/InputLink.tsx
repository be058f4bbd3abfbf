import type { ReactNode } from 'react'
import { inputId, showInput } from '../frame/route.ts'

/** id of the element that holds a finding */
export const findingId = (id: string) => inputId(`finding ${id}`)

/** Words that lead to the input, or the finding on this page, that they are about. */
export function InputLink({ link, children }: { link?: string | undefined; children: ReactNode }) {
  if (!link) return <>{children}</>
  const finding = /^finding:(.+)$/.exec(link)?.[1]
  if (finding !== undefined)
    return (
      <button type="button" className="plain inline" onClick={() => showFinding(finding)}>
        {children}
      </button>
    )
  return (
    <a
      href={`#/craft/${encodeURIComponent(link)}`}
      onClick={(event) => {
        // stay on the page when it shows the input itself
        if (showInput(link)) event.preventDefault()
      }}
    >
      {children}
    </a>
  )
}

/** Opens what a finding is folded in and puts the keyboard on it. */
function showFinding(id: string): void {
  const at = document.getElementById(findingId(id))
  for (let parent = at?.parentElement; parent; parent = parent.parentElement)
    if (parent instanceof HTMLDetailsElement) parent.open = true
  at?.scrollIntoView({ block: 'center' })
  at?.focus()
}
