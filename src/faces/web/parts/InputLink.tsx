import type { ReactNode } from 'react'
import { showInput } from '../frame/route.ts'

/** Words that lead to the input they are about; plain words when they are about a result. */
export function InputLink({ link, children }: { link?: string | undefined; children: ReactNode }) {
  // another finding stands on the same screen or one tap away; only inputs are gone to
  if (!link || link.startsWith('finding:')) return <>{children}</>
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
