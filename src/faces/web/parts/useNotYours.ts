import { useApp } from '../state/hooks.ts'
import { isOwn } from '../state/ownValues.ts'

/** True while nearly all that the craft says are values that nobody gave: then nothing is judged. */
export const useNotYours = (): boolean => useApp((s) => s.craft !== undefined && !isOwn(s.craft))
