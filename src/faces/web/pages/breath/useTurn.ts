import { useEffect, useState } from 'react'
import { peaksOf } from '../../../../trades/engine/torqueFromSimulation.ts'
import { traceAt } from './simulations.ts'
import type { Side } from './useBreath.ts'

/** The engine speed whose turn is looked at, and the turn itself, now and tried; the power peak unless chosen. */
export function useTurn(now: Side, tried: Side | undefined) {
  const [chosen, setChosen] = useState<number>()
  const curve = now.simulation?.output?.curve
  const speeds = (curve?.points ?? []).filter((p) => p.point).map((p) => p.rpm)
  const peak = curve && peaksOf(curve)?.power.rpm
  const rpm = chosen !== undefined && speeds.includes(chosen) ? chosen : (peak ?? 0)
  const trace = now.simulation?.traces.get(rpm)
  const triedTrace = tried?.simulation?.traces.get(rpm)
  const idle = (s: Side | undefined) => s?.simulation?.output !== undefined
  const nowIdle = idle(now)
  const triedIdle = idle(tried)
  const { key, order } = now
  const [triedKey, triedOrder] = [tried?.key, tried?.order]
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the order
  useEffect(() => {
    if (rpm > 0 && !trace && nowIdle) void traceAt(key, order, rpm)
  }, [rpm, trace, key, nowIdle])
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for the order
  useEffect(() => {
    if (rpm > 0 && !triedTrace && triedIdle && triedKey && triedOrder) void traceAt(triedKey, triedOrder, rpm)
  }, [rpm, triedTrace, triedIdle, triedKey])
  return { rpm, speeds, choose: setChosen, trace, triedTrace }
}

export type TurnState = ReturnType<typeof useTurn>
