import { useMemo } from 'react'
import { type BreathView, breathView, canSimulate } from '../../../../whole/breath/breathView.ts'
import { type Craft, triedValues } from '../../state/craftFile.ts'
import { triedCraftOf, useApp, useAppLater } from '../../state/hooks.ts'
import { type EngineOrder, keyOf, type Simulation, useSimulation } from './simulations.ts'

export interface Side {
  craft: Craft
  view: BreathView
  key: string
  order: EngineOrder
  simulation: Simulation | undefined
}

export interface Breath {
  now: Side
  /** the same with what is tried, when that touches this engine */
  tried: Side | undefined
}

/** One engine as it is and with what is tried, each with what is worked out of it so far. */
export function useBreath(engine: number): Breath | undefined {
  const craft = useApp((s) => s.craft)
  const triedCraft = useAppLater(triedCraftOf)
  const work = useApp((s) => s.work)
  const index = craft ? Math.min(engine, craft.engines.length - 1) : 0
  const now = useMemo(() => craft && side(craft, index), [craft, index])
  const other = useMemo(() => triedCraft && side(triedCraft, index), [triedCraft, index])
  const moved = other && other.key !== now?.key ? other : undefined
  const order: EngineOrder = { text: work?.goodText ?? '', tried: {}, engine: index }
  const triedOrder: EngineOrder = { ...order, tried: triedValues(work?.tried ?? []) }
  const simulation = useSimulation(now?.able ? now.key : undefined, order, false)
  const triedSimulation = useSimulation(moved?.able ? moved.key : undefined, triedOrder, true)
  if (!now) return undefined
  return {
    now: { ...now, order, simulation },
    tried: moved && { ...moved, order: triedOrder, simulation: triedSimulation },
  }
}

function side(craft: Craft, index: number) {
  const view = breathView(craft, index)
  return { craft, view, key: keyOf(craft, index), able: canSimulate(view) }
}
