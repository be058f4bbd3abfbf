import { useMemo } from 'react'
import { floatFromCraft } from '../../../../trades/float/floatFromCraft.ts'
import type { FloatInput } from '../../../../trades/float/input.ts'
import { liveFloat } from '../../../../trades/float/live.ts'
import { type Craft, triedValues } from '../../state/craftFile.ts'
import { triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'
import { hullFilesOf } from '../../state/hullFiles.ts'
import { type ReportState, reportKey, useReport } from './reports.ts'

/** One craft ready to float: its plain inputs, its live answer, and its report as far as it is. */
export interface Side {
  craft: Craft
  input: FloatInput
  weightsAssumed: boolean
  live: ReturnType<typeof liveFloat>
  key: string
  state: ReportState
}

export interface Float {
  now: Side | undefined
  /** why the craft gives no hull */
  fault: string | undefined
  /** the same with what is tried, when it floats otherwise */
  tried: Side | undefined
  triedFault: string | undefined
}

type Made = Omit<Side, 'state'> | { fault: string }
const made = new WeakMap<Craft, Made>()

/** Hull and live answer of a craft; made once, as crafts never change. */
function make(craft: Craft): Made {
  const before = made.get(craft)
  if (before) return before
  let out: Made
  try {
    const { input, weightsAssumed } = floatFromCraft(craft)
    out = {
      craft,
      input,
      weightsAssumed,
      live: liveFloat(input),
      key: reportKey(craft, hullFilesOf(craft).filesAre),
    }
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    out = { fault: error.message }
  }
  made.set(craft, out)
  return out
}

/** The craft as it floats now and with what is tried. */
export function useFloat(): Float | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const work = useApp((s) => s.work)
  const now = useMemo(() => craft && make(craft), [craft])
  const other = useMemo(() => triedCraft && make(triedCraft), [triedCraft])
  const nowSide = now && !('fault' in now) ? now : undefined
  const triedSide = other && !('fault' in other) && other.key !== nowSide?.key ? other : undefined
  const text = work?.goodText ?? ''
  const state = useReport(nowSide?.key, orderOf(text, {}, nowSide), false)
  const triedState = useReport(triedSide?.key, orderOf(text, triedValues(work?.tried ?? []), triedSide), true)
  if (!craft) return undefined
  return {
    now: nowSide && { ...nowSide, state },
    fault: now && 'fault' in now ? now.fault : undefined,
    tried: triedSide && { ...triedSide, state: triedState },
    triedFault: other && 'fault' in other ? other.fault : undefined,
  }
}

function orderOf(
  text: string,
  tried: Record<string, number | string | boolean>,
  side: Omit<Side, 'state'> | undefined,
) {
  const { files } = side ? hullFilesOf(side.craft) : {}
  return side && { text, tried, ...(files ? { files } : {}) }
}
