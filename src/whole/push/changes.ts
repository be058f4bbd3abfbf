/** What each single change would buy: the whole balance solved again with one thing different. */
import type { Range } from '../../base/answers/solved.ts'
import { percentile } from '../../base/numerics/effects.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { Change } from './balanceTypes.ts'
import { type MapStore, modelFromCraft } from './craftModel.ts'
import { type Drawable, redrawn } from './doubts.ts'
import { probe, type Sums } from './probe.ts'
import type { CraftModel } from './propulsionModel.ts'

/** A change before it is known what it does, and the craft with it. */
interface Idea extends Omit<Change, 'rotation' | 'pull' | 'topSpeed'> {
  craft: () => Craft
}

const mm = (x: number, digits = 0) => `${(x * 1000).toFixed(digits)} mm`

/** There is a belt, a chain or gears between engines and impeller. */
export const hasReduction = (craft: Craft): boolean => Math.abs(craft.drive.ratio.value - 1) > 1e-3

/** The changes worth trying on this craft; `bestPitch` in m or NaN. */
function ideasFor(craft: Craft, bestPitch: number): Idea[] {
  const ideas: Idea[] = []
  const { rotor, nozzle, stator } = craft.jet
  const put = (
    id: string,
    says: string,
    path: string,
    from: number,
    to: number,
    also: Record<string, number> = {},
  ) => ideas.push({ id, says, path, from, to, also, craft: () => whatIf(craft, { [path]: to, ...also }) })
  const pitch = rotor.pitch.value
  // an assumed trailing pitch follows by itself, a written one is scaled along
  const trailing = rotor.trailingPitch
  const along = (to: number): Record<string, number> =>
    trailing.source === 'assumed' ? {} : { 'jet.rotor.trailing pitch': (to / pitch) * trailing.value }
  const pitchTo = (id: string, says: string, to: number) =>
    put(id, says, 'jet.rotor.pitch', pitch, to, along(to))
  if (Number.isFinite(bestPitch) && Math.abs(bestPitch / pitch - 1) > 0.01)
    pitchTo('pitch-best', `pitch ${mm(bestPitch)} instead of ${mm(pitch)}`, bestPitch)
  pitchTo('pitch-less', `5 % less pitch, ${mm(0.95 * pitch)}`, 0.95 * pitch)
  pitchTo('pitch-more', `5 % more pitch, ${mm(1.05 * pitch)}`, 1.05 * pitch)
  const blades = rotor.blades.value
  if (blades > 2)
    put('blade-fewer', `one blade fewer, ${blades - 1}, same blade`, 'jet.rotor.blades', blades, blades - 1)
  if (blades < 5)
    put('blade-more', `one blade more, ${blades + 1}, same blade`, 'jet.rotor.blades', blades, blades + 1)
  const bore = nozzle.bore.value
  put('nozzle-larger', `nozzle 3 mm larger, ${mm(bore + 0.003)}`, 'jet.nozzle.bore', bore, bore + 0.003)
  put('nozzle-smaller', `nozzle 3 mm smaller, ${mm(bore - 0.003)}`, 'jet.nozzle.bore', bore, bore - 0.003)
  const gap = rotor.gap.value
  if (gap > 0.3e-3) put('gap', `tip gap 0.25 mm instead of ${mm(gap, 2)}`, 'jet.rotor.gap', gap, 0.25e-3)
  const edge = rotor.trailingEdge.value
  if (edge > 1.05e-3)
    put('edge', `trailing edges thinned to 1.0 mm from ${mm(edge, 1)}`, 'jet.rotor.trailing edge', edge, 1e-3)
  const rough = rotor.roughness.value
  if (rough > 4e-6)
    put(
      'smooth',
      `blades sanded and sealed, ${Math.round(rough * 1e6)} to 3 µm`,
      'jet.rotor.roughness',
      rough,
      3e-6,
    )
  const ratio = craft.drive.ratio.value
  // a direct drive has no ratio to change
  if (hasReduction(craft)) {
    const to = (more: number) => `ratio ${(more * ratio).toFixed(2)}`
    put('ratio-more', `10 % more reduction, ${to(1.1)}`, 'drive.ratio', ratio, 1.1 * ratio)
    put('ratio-less', `10 % less reduction, ${to(0.9)}`, 'drive.ratio', ratio, 0.9 * ratio)
  }
  if (stator.vanes.value === 0)
    put('stator', 'a stator of 7 vanes behind the impeller', 'jet.stator.vanes', 0, 7)
  const heaviest = craft.weights.reduce((b, w, i) => (w.mass.value > craft.weights[b]!.mass.value ? i : b), 0)
  const mass = craft.weights[heaviest]?.mass.value
  if (mass !== undefined && mass > 10)
    put(
      'lighter',
      `the craft 5 kg lighter (${craft.weights[heaviest]!.name})`,
      `weights.${heaviest}.mass`,
      mass,
      mass - 5,
    )
  return ideas
}

const noRange = (value: number): Range => ({ value, low: Number.NaN, high: Number.NaN })

/** draws that a change is seen on, the same with it and without */
const changeDraws = 64

/**
 * Every worthwhile single change with what it does to rotation (rev/s of the engine), pull and top speed against now: the
 * value from the whole balance with the change made, the range from the same draws with and without it, so that what is
 * doubtful in both cancels. A doubt's effect is taken to be the same part of torque, thrust and drag on the changed craft.
 */
export function changesFor(
  craft: Craft,
  now: Sums,
  bestPitch: number,
  maps: MapStore,
  able: Drawable,
  solved?: SolvedCurves,
): Change[] {
  const points = Array.from({ length: changeDraws }, (_, i) => able.drawAt(i))
  const before = points.map((u) => able.answersOf(u))
  const changes: Change[] = []
  for (const idea of ideasFor(craft, bestPitch)) {
    let model: CraftModel
    try {
      model = modelFromCraft(idea.craft(), maps, {}, solved)
    } catch (error) {
      if (error instanceof RangeError) continue
      throw error
    }
    const then = probe(model)
    const other = redrawn(able, model, then)
    const after = other && points.map((u) => other(u))
    const gain = (name: keyof Sums): Range => {
      const value = then[name] - now[name]
      if (!Number.isFinite(value)) return noRange(Number.NaN)
      const gains = (after ?? [])
        .map((a, i) => a[name] - before[i]![name])
        .filter(Number.isFinite)
        .sort((a, b) => a - b)
      if (gains.length < changeDraws / 2) return noRange(value)
      return {
        value,
        low: Math.min(value, percentile(gains, 0.025)),
        high: Math.max(value, percentile(gains, 0.975)),
      }
    }
    changes.push({
      id: idea.id,
      says: idea.says,
      path: idea.path,
      from: idea.from,
      to: idea.to,
      also: idea.also,
      rotation: gain('rotation'),
      pull: gain('pull'),
      topSpeed: gain('topSpeed'),
    })
  }
  return changes
}
