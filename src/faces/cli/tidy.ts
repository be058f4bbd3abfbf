import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

/** bytes of arrays given up that are waited for before the room is taken back */
const SLACK = 12e6

/**
 * Takes the room of arrays no longer used back early. Node waits until 64 MB of them have come together, which for an hour of
 * sound is a fifth of all that is needed. Call the answer between two pieces of work.
 */
export function makeTidier(): () => void {
  setFlagsFromString('--expose-gc')
  // the numbers of a recording are arrays outside the heap; a larger nursery would only be room held back
  setFlagsFromString('--semi-space-growth-factor=1')
  const collect = runInNewContext('gc') as (() => void) | undefined
  let left = process.memoryUsage().arrayBuffers
  return () => {
    if (process.memoryUsage().arrayBuffers < left + SLACK) return
    collect?.()
    left = process.memoryUsage().arrayBuffers
  }
}
