import { useMemo } from 'react'
import { type CraftLog, craftLog } from '../../../../../whole/log/craftLog.ts'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { useLogText } from '../../../state/logs.ts'

export interface OwnLog {
  text: string
  log: CraftLog
}

/** The craft's log: what stands in the craft file and what was written down beside it, as one. */
export function useCraftLog(craft: Craft): OwnLog {
  const text = useLogText(useApp((s) => s.work?.id))
  const log = useMemo(() => craftLog(craft, text), [craft, text])
  return useMemo(() => ({ text, log }), [text, log])
}
