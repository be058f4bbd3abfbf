import type { ReactNode } from 'react'
import type { Search } from '../work/searches.ts'
import { JobProgress } from './JobProgress.tsx'

interface Props {
  search: Pick<Search<'pipe-search'>, 'running' | 'error' | 'stopped'> | undefined
  onCancel: () => void
  /** what starts the search, shown while it does not run */
  children: ReactNode
}

/** How far a search is, or what starts it, and under that why it ended before its time. */
export function SearchState({ search, onCancel, children }: Props) {
  return (
    <>
      {search?.running ? (
        <JobProgress says={search.running.says} part={search.running.part} onCancel={onCancel} />
      ) : (
        children
      )}
      <p role="status" className={search?.error ? 'blankfault' : 'quiet'}>
        {search?.error ?? (search?.stopped ? 'Called off; what was found so far is below.' : '')}
      </p>
    </>
  )
}
