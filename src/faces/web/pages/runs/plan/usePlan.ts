import { useEffect, useState } from 'react'
import type { Finding } from '../../../../../base/answers/finding.ts'
import type { RunPlanned } from '../../../../../jobs/runPlanJob.ts'
import type { RunRanking } from '../../../../../whole/faults/rankingTypes.ts'
import type { Craft } from '../../../state/craftFile.ts'
import { useApp } from '../../../state/hooks.ts'
import { hullFilesOf } from '../../../state/hullFiles.ts'
import { callJob } from '../../../work/call.ts'

/** The plan of the next run of a craft whose balance is known; worked out by a worker, again when craft or log change. */
export function usePlan(craft: Craft, log: string, ranking?: RunRanking): RunPlanned | undefined {
  const text = useApp((s) => s.work?.goodText)
  const looked = useApp((s) => (s.looked?.craft === s.craft ? s.looked : undefined))
  const findings = useApp((s) => s.findings)
  const [planned, setPlanned] = useState<RunPlanned>()
  const balance = looked?.balance
  useEffect(() => {
    if (!text || !balance || !looked) return
    const { files } = hullFilesOf(craft)
    const call = callJob('run-plan', {
      text,
      log,
      balance,
      findings: Object.values(findings).flatMap((list: readonly Finding[] | undefined) => list ?? []),
      solved: looked.solved,
      ...(files ? { files } : {}),
      ...(ranking ? { ranking } : {}),
    })
    call.done.then(setPlanned, () => {})
    return () => call.cancel()
    // findings come with the look
  }, [craft, text, log, balance, looked, findings, ranking])
  return planned
}
