/** What each single change would buy: the whole balance solved again with one thing different. */
import { inKg, inMicrons, inMm, inTimes } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
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

/** There is a belt, a chain or gears between engines and impeller. */
export const hasReduction = (craft: Craft): boolean => Math.abs(craft.drive.ratio.value - 1) > 1e-3

/** The changes worth trying on this craft; `bestPitch` in m or NaN. */
function ideasFor(craft: Craft, bestPitch: number): Idea[] {
  const ideas: Idea[] = []
  const { rotor, nozzle, stator } = craft.jet
  const put = (
    id: string,
    says: Sentence,
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
  const pitchTo = (id: string, says: Sentence, to: number) =>
    put(id, says, 'jet.rotor.pitch', pitch, to, along(to))
  // whole millimetres are what is printed, so that is what is worked out; the same pitch is no change
  const whole = Math.round(bestPitch * 1000) / 1000
  if (Number.isFinite(whole) && Math.abs(whole - pitch) > 0.75e-3)
    pitchTo('pitch-best', say`pitch ${inMm(whole)} instead of ${inMm(pitch)}`, whole)
  pitchTo('pitch-less', say`5 % less pitch, ${inMm(0.95 * pitch)}`, 0.95 * pitch)
  pitchTo('pitch-more', say`5 % more pitch, ${inMm(1.05 * pitch)}`, 1.05 * pitch)
  const blades = rotor.blades.value
  if (blades > 2)
    put('blade-fewer', `one blade fewer, ${blades - 1}, same blade`, 'jet.rotor.blades', blades, blades - 1)
  if (blades < 5)
    put('blade-more', `one blade more, ${blades + 1}, same blade`, 'jet.rotor.blades', blades, blades + 1)
  const bore = nozzle.bore.value
  put(
    'nozzle-larger',
    say`nozzle ${inMm(0.003)} larger, ${inMm(bore + 0.003)}`,
    'jet.nozzle.bore',
    bore,
    bore + 0.003,
  )
  put(
    'nozzle-smaller',
    say`nozzle ${inMm(0.003)} smaller, ${inMm(bore - 0.003)}`,
    'jet.nozzle.bore',
    bore,
    bore - 0.003,
  )
  const gap = rotor.gap.value
  if (gap > 0.3e-3)
    put(
      'gap',
      say`tip gap ${inMm(0.25e-3, 0.01)} instead of ${inMm(gap, 0.01)}`,
      'jet.rotor.gap',
      gap,
      0.25e-3,
    )
  const edge = rotor.trailingEdge.value
  if (edge > 1.05e-3)
    put(
      'edge',
      say`trailing edges thinned to ${inMm(1e-3, 0.1)} from ${inMm(edge, 0.1)}`,
      'jet.rotor.trailing edge',
      edge,
      1e-3,
    )
  const rough = rotor.roughness.value
  if (rough > 4e-6)
    put(
      'smooth',
      say`blades sanded and sealed, ${inMicrons(rough)} to ${inMicrons(3e-6)}`,
      'jet.rotor.roughness',
      rough,
      3e-6,
    )
  const ratio = craft.drive.ratio.value
  // a direct drive has no ratio to change
  if (hasReduction(craft)) {
    const to = (more: number) => say`ratio ${inTimes(more * ratio)}`
    put('ratio-more', say`10 % more reduction, ${to(1.1)}`, 'drive.ratio', ratio, 1.1 * ratio)
    put('ratio-less', say`10 % less reduction, ${to(0.9)}`, 'drive.ratio', ratio, 0.9 * ratio)
  }
  if (stator.vanes.value === 0)
    put('stator', 'a stator of 7 vanes behind the impeller', 'jet.stator.vanes', 0, 7)
  const heaviest = craft.weights.reduce((b, w, i) => (w.mass.value > craft.weights[b]!.mass.value ? i : b), 0)
  const mass = craft.weights[heaviest]?.mass.value
  if (mass !== undefined && mass > 10)
    put(
      'lighter',
      say`the craft ${inKg(5)} lighter (${craft.weights[heaviest]!.name})`,
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
