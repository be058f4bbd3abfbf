import type { ReactNode } from 'react'
import { addressOf, showFinding, showInput } from '../frame/pageRoute.ts'

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
      href={addressOf('craft', link)}
      onClick={(event) => {
        // stay on the page when it shows the input itself
        if (showInput(link)) event.preventDefault()
      }}
    >
      {children}
    </a>
  )
}
