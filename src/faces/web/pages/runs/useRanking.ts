import { useEffect, useState } from 'react'
import type { RankOrder } from '../../../../jobs/rankRunJob.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { parseReadings, readPull } from '../../../../trades/sound/pull.ts'
import type { RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { hullFilesOf } from '../../state/hullFiles.ts'
import { ranker } from './ranker.ts'
import type { Told } from './told.ts'

/** What may have gone wrong, and whether something was told since that it does not know yet. */
export interface Weighed {
  ranking: RunRanking | undefined
  stale: boolean
  work?: { part: number; says: string } | undefined
}

/** ms that typing may go on before causes are weighed again */
const pause = 60

const numbers = new WeakMap<object, number>()
let count = 0
/** A number for a thing, the same as long as it is the same thing. */
const numberOf = (of: object | undefined): number => {
  if (!of) return 0
  const held = numbers.get(of) ?? ++count
  numbers.set(of, held)
  return held
}

/** What the ranking reads of a hearing: its picture stays here. */
const bare = (hearing: Hearing): Hearing => ({
  ...hearing,
  spectrogram: { ...hearing.spectrogram, columns: 0, rows: 0, level: new Uint8Array(0) },
})

/** What may have gone wrong in the run on the bench, its log counted in, weighed by a worker. */
export function useRanking(hearing: Hearing | undefined, told: Told, craft: Craft, logText: string): Weighed {
  const text = useApp((s) => s.work?.goodText)
  const looked = useApp((s) => s.looked)
  const known = looked?.craft === craft ? looked : undefined
  const [done, setDone] = useState<{ order: RankOrder; of: Hearing; ranking: RunRanking }>()
  const [asked, setAsked] = useState<RankOrder>()
  const [work, setWork] = useState<Weighed['work']>()
  const { kind, observed, answered, readings, weights } = told
  useEffect(() => {
    if (!hearing || hearing.verdict.code === 'no engine' || !text) return
    const { files } = hullFilesOf(craft)
    const order: RankOrder = {
      text,
      log: logText,
      balanced: numberOf(known?.balance),
      ...(files ? { files } : {}),
      session: {
        hearing: bare(hearing),
        kind,
        observed,
        answered,
        weights,
        balance: known?.balance,
        solved: known?.solved,
        pull: readPull(parseReadings(readings))?.force.value,
      },
    }
    setAsked(order)
    let gone = false
    // behind the drawing of what was just changed
    const timer = setTimeout(() => {
      ranker
        .ask(order, (part, says) => !gone && setWork({ part, says }))
        .then(
          (ranking) => {
            if (gone || !ranking) return
            setDone({ order, of: hearing, ranking })
            setWork(undefined)
          },
          () => !gone && setWork(undefined),
        )
    }, pause)
    return () => {
      gone = true
      clearTimeout(timer)
    }
  }, [hearing, kind, observed, answered, readings, weights, craft, text, known, logText])
  const own = done?.of === hearing ? done : undefined
  return { ranking: own?.ranking, stale: own !== undefined && own.order !== asked, work }
}
