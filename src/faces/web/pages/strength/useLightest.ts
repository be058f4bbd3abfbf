import { useCallback, useEffect, useRef, useState } from 'react'
import type { LightestDeckAnswer, LightestDeckOrder } from '../../../../jobs/lightestDeckJob.ts'
import { type Call, callJob } from '../../work/call.ts'

interface SearchState {
  /** the last answer, or the early one of the search under way */
  output?: LightestDeckAnswer
  running: boolean
  part?: number
  says: string
  error?: string
}

const quiet = (s: SearchState): SearchState => ({
  ...(s.output ? { output: s.output } : {}),
  running: false,
  says: '',
})

/** The search of one bay: start it, watch it, call it off. Starting again, or leaving, calls the one under way off. */
export function useLightest() {
  const [state, setState] = useState<SearchState>({ running: false, says: '' })
  const call = useRef<Call<LightestDeckAnswer>>(undefined)
  const cancel = useCallback(() => {
    call.current?.cancel()
    call.current = undefined
    setState(quiet)
  }, [])
  const start = useCallback((order: LightestDeckOrder) => {
    call.current?.cancel()
    const mine = callJob(
      'lightest-deck',
      order,
      (part, says) => {
        if (call.current === mine) setState((s) => ({ ...s, running: true, part, says }))
      },
      [],
      (output) => {
        if (call.current === mine) setState((s) => ({ ...s, output }))
      },
    )
    call.current = mine
    setState((s) => ({ ...quiet(s), running: true, says: 'Starting' }))
    mine.done.then(
      (output) => call.current === mine && setState({ output, running: false, says: '' }),
      (error: Error) => {
        if (call.current === mine && error.name !== 'AbortError')
          setState((s) => ({ ...quiet(s), error: error.message }))
      },
    )
  }, [])
  useEffect(
    () => () => {
      call.current?.cancel()
    },
    [],
  )
  return { ...state, start, cancel }
}
