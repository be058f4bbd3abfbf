import { useCallback, useEffect, useRef, useState } from 'react'
import type { JobInput, JobName, JobOutput } from '../../jobs/jobs.ts'
import { type Call, callJob } from './call.ts'

export interface JobState<T> {
  /** the last answer; stays while the next is worked out */
  output?: T
  running: boolean
  part?: number
  says: string
  error?: string
}

/** A long job for a component: start it, watch it, call it off. Starting again calls the one under way off. */
export function useJob<N extends JobName>(name: N) {
  const [state, setState] = useState<JobState<JobOutput<N>>>({ running: false, says: '' })
  const call = useRef<Call<JobOutput<N>>>(undefined)
  const cancel = useCallback(() => {
    call.current?.cancel()
    call.current = undefined
    setState(({ output }) => ({ ...(output === undefined ? {} : { output }), running: false, says: '' }))
  }, [])
  const start = useCallback(
    (input: JobInput<N>) => {
      call.current?.cancel()
      const mine = callJob(name, input, (part, says) => {
        if (call.current === mine) setState((s) => ({ ...s, running: true, part, says }))
      })
      call.current = mine
      setState(({ output }) => ({
        ...(output === undefined ? {} : { output }),
        running: true,
        says: 'Starting',
      }))
      mine.done.then(
        (output) => call.current === mine && setState({ output, running: false, says: '' }),
        (error: Error) => {
          if (call.current === mine && error.name !== 'AbortError')
            setState((s) => ({ ...s, running: false, error: error.message }))
        },
      )
    },
    [name],
  )
  useEffect(() => () => call.current?.cancel(), [])
  return { ...state, start, cancel }
}
