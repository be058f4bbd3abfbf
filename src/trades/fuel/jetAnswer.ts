/** The jets: what the engines want, what they pass, and what a chip does in each. */
import { rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import { type ChipCase, type ChipEffect, chipInJet } from './chipInJet.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import { jetDischarge, jetFlow, jetFor } from './jetFlow.ts'

export interface EngineJet {
  engine: string
  path: string
  running: boolean
  /** m, the file's or the one that suits */
  bore: number
  given: boolean
  /** m³/s, petrol and oil together, that the engine wants at its most power, and that the jet passes there */
  wanted: number
  passes: Range
  /** air ratio with this jet, and as set */
  lambda: Range
  set: number
  setLow: number
  setHigh: number
}

export interface JetAnswer {
  jets: EngineJet[]
  /** what `chipInJet` asks of this craft besides the chip: running engines and the craft's thrust and drag */
  base: Pick<ChipCase, 'engines' | 'curve'>
  /** a strip a quarter of the jet wide in the first running engine's jet; absent when none runs */
  quarter?: ChipEffect
  /** the widest chip that the filter lets through; absent where it lets through what shuts the jet */
  throughFilter?: ChipEffect
  /** m, that chip's width */
  widest: number
}

export function jetsOf(c: FuelCraft): JetAnswer {
  const { carburettor, use, filter } = c.section
  const density = c.density.value
  const jets = c.engines.map((e): EngineJet => {
    const share = 1 + c.oil.value
    const wanted = (e.most.value * use.consumption.value * share) / density
    const suits = jetFor(wanted * density, carburettor.depression.value, density, jetDischarge.value)
    const own = carburettor.jet
    const bore = own?.value ?? suits
    const passes = rangeOf(
      ([d, p, cd]) => jetFlow(d!, p!, density, cd!),
      [own ?? { value: bore, low: bore, high: bore }, carburettor.depression, jetDischarge],
    )
    const lambda = own
      ? rangeOf(
          ([power, work, d, p, cd, set]) =>
            (set! * ((power! * work! * share) / density)) / jetFlow(d!, p!, density, cd!),
          [e.most, use.consumption, own, carburettor.depression, jetDischarge, e.lambda],
        )
      : { ...e.lambda }
    return {
      engine: e.name,
      path: e.path,
      running: e.running,
      bore,
      given: own !== undefined,
      wanted,
      passes,
      lambda: { value: lambda.value, low: lambda.low, high: lambda.high },
      set: e.lambda.value,
      setLow: e.lambda.low,
      setHigh: e.lambda.high,
    }
  })
  const running = jets.filter((j) => j.running)
  const first = running[0]
  const base = baseOf(c, running)
  const widest = filter.at === 'none' ? Number.POSITIVE_INFINITY : filter.mesh.value
  if (!first) return { jets, base, widest }
  const strip = (k: number) => chipInJet({ ...base, k, form: 'strip', engine: 0 })
  return {
    jets,
    base,
    widest,
    quarter: strip(0.25),
    ...(widest < first.bore ? { throughFilter: strip(widest / first.bore) } : {}),
  }
}

/** Running engines with their mixtures, and how thrust and drag meet where they are all on one shaft. */
function baseOf(c: FuelCraft, running: readonly EngineJet[]): JetAnswer['base'] {
  const { shaft } = c.setting
  return {
    engines: running.map((j) => ({ name: j.engine, lambda: j.set })),
    ...(shaft && shaft.together === running.length ? { curve: shaft.curve } : {}),
  }
}
