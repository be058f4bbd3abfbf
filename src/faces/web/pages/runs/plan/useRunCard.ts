import { useCallback, useEffect, useMemo, useState } from 'react'
import { parseReadings } from '../../../../../trades/sound/pull.ts'
import { boxesOf } from '../../../../../whole/plan/planCard.ts'
import type { PlanStep, RunPlan } from '../../../../../whole/plan/runPlan.ts'
import { app } from '../../../state/app.ts'
import { addToLog } from '../../../state/logs.ts'
import { openStore, type Store } from '../../../state/saved.ts'

/** What is filled in on the bank, by step and box; outlives a reload, without a network too. */
export interface RunCard {
  held: Readonly<Record<string, string>>
  put: (key: string, text: string) => void
  clear: () => void
  /** writes what was filled in as a run into the log */
  write: (plan: RunPlan) => Promise<void>
}

let opened: Promise<Store> | undefined
const store = () => (opened ??= openStore())
const keyOf = (craftId: string) => `run card ${craftId}`

export function useRunCard(craftId: string | undefined, craftName: string): RunCard {
  const [held, setHeld] = useState<Readonly<Record<string, string>>>({})
  useEffect(() => {
    if (!craftId) return
    let gone = false
    void store()
      .then((s) => s.setting<Record<string, string>>(keyOf(craftId)))
      .then((kept) => !gone && setHeld(kept ?? {}))
    return () => {
      gone = true
    }
  }, [craftId])
  const keep = useCallback(
    (next: Readonly<Record<string, string>>) => {
      setHeld(next)
      if (craftId) void store().then((s) => s.setSetting(keyOf(craftId), next))
    },
    [craftId],
  )
  return useMemo(
    () => ({
      held,
      put: (key, text) => keep({ ...held, [key]: text }),
      clear: () => keep({}),
      async write(plan) {
        if (!craftId) return
        const says = plan.steps.flatMap((step) => filledIn(step, held)).join('; ')
        if (says === '') return app.say('Nothing is filled in yet.')
        const pull = fullPull(held)
        const at = new Date().toISOString().slice(0, 10)
        const readings = pull === undefined ? {} : { readings: { pull } }
        await addToLog(craftId, { at, kind: 'run', says, ...readings }, craftName)
        keep({})
        app.say('The run is written into the log.')
      },
    }),
    [held, keep, craftId, craftName],
  )
}

const filledIn = (step: PlanStep, held: Readonly<Record<string, string>>): string[] => {
  const parts = boxesOf(step).flatMap((label) => {
    const text = held[`${step.id} ${label}`]?.trim()
    return text ? [`${label} ${text}`] : []
  })
  return parts.length > 0 ? [`${step.id}: ${parts.join(', ')}`] : []
}

/** The middle reading of the scale at full throttle, as text with its unit; undefined without one. */
function fullPull(held: Readonly<Record<string, string>>): string | undefined {
  const typed = ['scale 1', 'scale 2', 'scale 3'].flatMap((label) => held[`full ${label}`]?.trim() || [])
  const kg = parseReadings(typed.join('; ')).sort((a, b) => a - b)
  const middle = kg[Math.floor(kg.length / 2)]
  return middle === undefined ? undefined : `${Number(middle.toPrecision(4))} kg`
}
