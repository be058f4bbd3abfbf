/**
 * The engine bay before the trades that have parts in it: how the engines run, as plain numbers, and the air they leave there. Everyone
 * who needs the bay's air (strength, fuel, their pages and jobs) asks here, so that there is one.
 */
import { keptBy } from '../base/numerics/keep.ts'
import type { Craft } from '../craft/index.ts'
import { assumedBayAir, type BayAir } from '../hull/site/airOfBay.ts'
import type { BayRun, EngineRun, RunState } from '../trades/bay/bayRun.ts'
import { bayTrade } from '../trades/bay/bayTrade.ts'
import type { HeatCurve } from '../trades/engine/curve.ts'
import { enginesFromCraft } from '../trades/engine/enginesFromCraft.ts'
import { solveTrade } from '../trades/trade.ts'
import type { Balance, OperatingPoint } from './push/balanceTypes.ts'

/** What is asked for of a look: the craft, and its balance where there is one. */
interface Looked {
  readonly craft: Craft
  readonly balance?: Balance
}

const runs = new WeakMap<Balance, BayRun>()

/** How the engines run while the bay warms: tied up and at top speed, or at their power peaks where no balance is known. Kept by identity. */
export function bayRunOf({ craft, balance }: Looked): BayRun {
  if (!balance) return atFullPower(craft)
  const known = runs.get(balance)
  if (known) return known
  const states = [stateAt(craft, balance, 'tied up', balance.tiedUp)]
  if (balance.top) states.push(stateAt(craft, balance, 'at top speed', balance.top))
  const sound = states.filter((s) => Number.isFinite(s.rotation) && s.engines.some((e) => e.power > 0))
  const run = sound.length > 0 ? { states: sound } : atFullPower(craft)
  runs.set(balance, run)
  return run
}

/** Power at the crank of each engine in an operating point; engines on one shaft share it by their volume. */
function stateAt(craft: Craft, balance: Balance, name: RunState['name'], point: OperatingPoint): RunState {
  const all = 2 * Math.PI * point.rotation * point.engineTorque
  const together = craft.drive.arrangement === 'one shaft'
  const sizes = craft.engines.map((e) => (e.running ? sizeOf(e) : 0))
  const whole = sizes.reduce((a, b) => a + b, 0)
  const engines = craft.engines.map((e, i): EngineRun => {
    if (!e.running || !(all > 0)) return { power: 0 }
    const power = together ? (all * sizes[i]!) / whole : all
    const heat = balance.heat?.[i]
    return heat ? { power, ...heatAt(heat, point.rotation) } : { power }
  })
  return {
    name,
    speed: point.speed,
    rotation: point.rotation,
    engines,
    ...(Number.isFinite(point.flow) ? { flow: point.flow } : {}),
  }
}

/** motors count alike */
const sizeOf = (e: Craft['engines'][number]): number =>
  e.kind === 'electric'
    ? 1
    : e.kind === 'two-stroke'
      ? e.bore.value ** 2 * e.stroke.value * e.cylinders.value
      : e.displacement.value

const atFullPower = keptBy(
  8,
  (craft: Craft) => [craft.engines, craft.place],
  (craft): BayRun => {
    const engines = enginesFromCraft(craft)
    const power = engines.map((e) => (e.running && e.curve ? e.curve.powerPeak.power : 0))
    const rotation = Math.max(0, ...engines.map((e) => e.curve?.powerPeak.rotation ?? 0))
    if (!power.some((p) => p > 0)) return { states: [] }
    return {
      states: [{ name: 'at full power', speed: 0, rotation, engines: power.map((p) => ({ power: p })) }],
    }
  },
)

/** Heat, air and fuel at a rotation, read straight between the speeds that were simulated and held beyond them. */
function heatAt(c: HeatCurve, n: number): Omit<EngineRun, 'power'> {
  const last = c.rotation.length - 1
  const at = c.rotation.findIndex((r) => r >= n)
  const j = at < 0 ? last : Math.max(1, at)
  const [a, b] = [c.rotation[j - 1]!, c.rotation[j]!]
  const part = Math.min(1, Math.max(0, (n - a) / (b - a)))
  const read = (list: readonly number[]) => list[j - 1]! + part * (list[j]! - list[j - 1]!)
  return {
    heat: { cylinder: read(c.cylinder), case: read(c.case), pipe: read(c.pipe), box: read(c.box) },
    air: read(c.air),
    fuel: read(c.fuel),
    exhaustT: read(c.exhaustT),
  }
}

/** The bay's air of a craft, as other trades take it; the same object as long as craft and balance stay the same. */
export function bayAirOf(looked: Looked): BayAir {
  const run = bayRunOf(looked)
  if (run.states.length === 0) return usual(looked.craft)
  return solveTrade(bayTrade, looked.craft, run).answer.air
}

const usual = keptBy(
  8,
  (craft: Craft) => [craft.place],
  (craft) => assumedBayAir(craft),
)
