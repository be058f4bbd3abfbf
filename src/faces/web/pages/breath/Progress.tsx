import { Button } from 'react-aria-components/Button'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { resume, stop } from './simulations.ts'
import type { Side } from './useBreath.ts'

/** What is being worked out, or a way to go on. */
export function Progress({ side }: { side: Side }) {
  const s = side.simulation
  if (s?.running)
    return <JobProgress says={s.running.says} part={s.running.part} onCancel={() => stop(side.key)} />
  if (!s?.stopped && !s?.error) return null
  return (
    <p className="row">
      {s.error ?? 'Called off.'} <Button onPress={() => resume(side.key)}>Work it out</Button>
    </p>
  )
}
