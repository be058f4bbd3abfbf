import { useEffect, useState } from 'react'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { parseReadings, readPull } from '../../../../trades/sound/pull.ts'
import type { RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import type { RunSession } from '../../../../whole/faults/session.ts'
import { craftLog } from '../../../../whole/log/craftLog.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import type { Told } from './told.ts'

/** ms that typing may go on before causes are weighed again */
const pause = 60

/** What may have gone wrong in the run on the bench, its log counted in; undefined until it is weighed. */
export function useRanking(
  hearing: Hearing | undefined,
  told: Told,
  craft: Craft,
  logText: string,
): RunRanking | undefined {
  const looked = useApp((s) => s.looked)
  const known = looked?.craft === craft ? looked : undefined
  const [ranked, setRanked] = useState<{ of: Hearing; ranking: RunRanking }>()
  const { kind, observed, answered, readings } = told
  useEffect(() => {
    if (!hearing || hearing.verdict.code === 'no engine') return
    const session: RunSession = {
      craft,
      log: craftLog(craft, logText).entries.map(({ entry }) => entry),
      hearing,
      kind,
      observed,
      answered,
      balance: known?.balance,
      solved: known?.solved,
      pull: readPull(parseReadings(readings))?.force.value,
    }
    let gone = false
    // behind the drawing of what was just changed
    const timer = setTimeout(async () => {
      const { rankRun } = await import('../../../../whole/faults/rankRun.ts')
      if (!gone) setRanked({ of: hearing, ranking: rankRun(session) })
    }, pause)
    return () => {
      gone = true
      clearTimeout(timer)
    }
  }, [hearing, kind, observed, answered, readings, craft, known, logText])
  return ranked?.of === hearing ? ranked?.ranking : undefined
}
