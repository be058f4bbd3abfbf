import { useMemo } from 'react'
import type { Finding, Question } from '../../../base/answers/finding.ts'
import { useApp } from '../state/hooks.ts'

export interface PageFindings {
  /** as the file stands, the page's headlines left out */
  now: readonly Finding[]
  /** the same with what is tried, while something is tried and looked at */
  tried: readonly Finding[] | undefined
  /** the page's answers in one sentence, by the trade's id */
  headline: Finding | undefined
  triedHeadline: Finding | undefined
  /** true while the craft has changed since it was looked at */
  stale: boolean
}

const none: readonly Finding[] = []
const isHeadline = (f: Finding) => f.id.endsWith('.headline')

/** What one look at the craft found for a page: the only place a page takes findings from. */
export function useFindings(question: Question): PageFindings {
  const now = useApp((s) => s.findings[question]) ?? none
  const tried = useApp((s) => (s.triedCraft ? s.triedFindings[question] : undefined))
  const stale = useApp(
    (s) => s.looked !== undefined && (s.looked.craft !== s.craft || s.looked.triedCraft !== s.triedCraft),
  )
  return useMemo(
    () => ({
      now: now.filter((f) => !isHeadline(f)),
      tried: tried?.filter((f) => !isHeadline(f)),
      headline: now.find(isHeadline),
      triedHeadline: tried?.find(isHeadline),
      stale,
    }),
    [now, tried, stale],
  )
}
