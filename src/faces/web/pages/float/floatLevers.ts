import { asChange, inCm, inDegrees, inKg } from '../../../../base/answers/amounts.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { FloatInput } from '../../../../trades/float/input.ts'
import { type LiveState, liveFloat } from '../../../../trades/float/live.ts'
import type { PanelInput } from '../../parts/InputsPanel.tsx'
import type { Side } from './useFloat.ts'

/** The inputs that move how it sits most, with what a step of each does, worked out on the live answer. */
export function floatLevers(side: Side): PanelInput[] {
  const { input, live } = side
  const { x, y, stance, mass } = input.rider
  const base = live(x, y)
  if (!base) return [{ path: 'rider.position' }, { path: 'rider.off centre', low: -0.3, high: 0.3 }]
  const trim = (s: LiveState | undefined) => (s?.stays ? s.attitude.trim - base.attitude.trim : Number.NaN)
  const heel = (s: LiveState | undefined) => (s?.stays ? s.attitude.heel - base.attitude.heel : Number.NaN)
  const forward = live(x + 0.1, y)
  const out = live(x, y + 0.05)
  const heavier = liveFloat(heavierRider(input, 10))(x, y)
  // leaves the live answer where it was
  live(x, y, stance)
  const heaviest = input.weights.reduce((a, w, i) => (w.mass > input.weights[a]!.mass ? i : a), 0)
  const listed = side.craft.weights.length > 0 && !side.weightsAssumed
  const half = input.hull.beam / 2
  return [
    { path: 'rider.stance', effect: 'lower is steadier' },
    {
      path: 'rider.off centre',
      low: -0.6 * half,
      high: 0.6 * half,
      effect: effect(say`${inCm(0.05)} to port`, heel(out), 'heel'),
    },
    {
      path: 'rider.position',
      low: 0.1 * input.hull.length,
      high: 0.85 * input.hull.length,
      effect: effect(say`${inCm(0.1)} forward`, trim(forward), 'trim'),
    },
    {
      path: 'rider.mass',
      low: Math.min(40, mass),
      high: Math.max(130, mass),
      effect: heavier?.stays
        ? say`${inKg(10)} more: ${asChange(inCm(heavier.draftAft - base.draftAft, 0.1))} of draft`
        : say`${inKg(10)} more: it does not stay`,
    },
    ...(listed
      ? [
          {
            path: `weights.${heaviest}.mass`,
            label: `Mass of ${input.weights[heaviest]!.name}`,
            effect: 'the heaviest item',
          },
        ]
      : []),
    ...(side.craft.hull.mesh !== undefined ? [] : [{ path: 'hull.beam' }, { path: 'hull.depth' }]),
  ]
}

function heavierRider(input: FloatInput, kg: number): FloatInput {
  return { ...input, rider: { ...input.rider, mass: input.rider.mass + kg } }
}

function effect(step: Sentence, by: number, of: string): Sentence {
  return Number.isFinite(by)
    ? say`${step}: ${asChange(inDegrees(by))} of ${of}`
    : say`${step}: it does not stay`
}
