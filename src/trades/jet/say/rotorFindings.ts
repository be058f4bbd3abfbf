/** Findings about the rotor and what stands round it. */
import {
  asChange,
  inCount,
  inMicrons,
  inMm,
  inMpa,
  inNewtons,
  inPercent,
  inTimes,
  inTorque,
} from '../../../base/answers/amounts.ts'
import type { Finding, Standing } from '../../../base/answers/finding.ts'
import { say } from '../../../base/answers/sentence.ts'
import type { Craft } from '../../../craft/index.ts'
import { bladeReasons, compareBlades } from '../advice.ts'
import { bladeLoad } from '../bladeStrength.ts'
import { inducerGapHead } from '../cavitation.ts'
import { grateBlockage } from '../intakeFlow.ts'
import { solveJet } from '../jet.ts'
import { grateFromCraft, jetFromCraft } from '../jetFromCraft.ts'
import type { JetLimits } from '../jetLimits.ts'
import type { JetSpec } from '../jetTypes.ts'
import { fatigueIndex, printMaterials, rootNeeded } from '../printed.ts'
import { atEngine, headSays, measure, src, type View } from './jetView.ts'

/** roughness of a sanded and sealed blade, m */
const smoothTo = 2e-6

/** tip speed at which nothing cavitates, m/s: small changes are compared there */
const wettedTip = 25

export function loadingOf(view: View, limits: JetLimits): Finding {
  const { tied } = view
  const stalled = tied.flags.includes('stall') || tied.flags.includes('deep stall')
  const hub = view.spec.rotor.hubDiameter / view.spec.rotor.tipDiameter
  const factor = inTimes(tied.diffusion)
  const most = inTimes(limits.diffusionRated.value)
  const bore = inMm(view.spec.system.nozzleDiameter)
  return {
    id: 'jet.loading',
    question: 'push',
    says: stalled
      ? say`Tied up the blades are stalled (diffusion factor ${factor}, limit ${most}): figures for pull and torque are rough.`
      : tied.diffusion > limits.diffusionRated.value
        ? say`Tied up the blades near the hub are at their limit (diffusion factor ${factor}, limit ${most}); the rest of the span works normally.`
        : say`Tied up the blades work below their stall limit (diffusion factor ${factor} of ${most}).`,
    ...(stalled || tied.diffusion > limits.diffusionRated.value
      ? { act: say`a larger nozzle than ${bore}, or less growth of pitch, unloads them` }
      : {}),
    value: tied.diffusion,
    standing: stalled || tied.diffusion > limits.diffusionRough.value ? 'watch' : 'good',
    because: [
      {
        says: say`flow is ${inPercent(tied.advance)} of what the screw would pass without load`,
        link: 'jet',
      },
      { says: say`hub ${inPercent(hub)} of the bore`, link: 'jet.rotor.hub' },
      { says: say`nozzle ${bore}`, link: 'jet.nozzle.bore' },
    ],
    sources: ['NASA SP-36, Aerodynamic Design of Axial-Flow Compressors (1965), diffusion factor', src.strip],
  }
}

export function bladesOf(view: View, limits: JetLimits): Finding {
  const { spec, tied } = view
  const now = spec.rotor.blades
  const at = view.top ?? tied
  const cases = compareBlades(
    spec,
    at.n,
    at.T,
    at.V,
    [now - 1, now + 1].filter((z) => z >= 2),
  )
  const reasons = bladeReasons(spec, at)
  const best = cases
    .filter((c) => Number.isFinite(c.thrust) && !c.stalled)
    .reduce<(typeof cases)[number] | undefined>((a, b) => (a && a.thrust >= b.thrust ? a : b), undefined)
  const gain = best ? best.thrust / at.F - 1 : 0
  const worth = best !== undefined && gain > limits.bladesGain.value
  return {
    id: 'jet.blades',
    question: 'push',
    says: worth
      ? say`${inCount(best.blades)} blades of ${inMm(best.pitch)} pitch would load the engines the same and push ${inPercent(gain)} more.`
      : say`${inCount(now)} blades are right here: no other number with its pitch matched to the engines pushes more than ${inPercent(limits.bladesGain.value)} better.`,
    value: now,
    standing: worth ? 'watch' : 'good',
    because: [
      ...cases
        .filter((c) => Number.isFinite(c.pitch))
        .map((c) => ({
          says: say`${inCount(c.blades)} blades, ${inMm(c.pitch)}: ${inNewtons(c.thrust)} against ${inNewtons(at.F)} now${c.stalled ? ', stalled' : ''}`,
          link: 'jet.rotor.blades',
        })),
      ...reasons.fewer.map((r) => ({ says: say`for fewer: ${r}`, link: 'jet.rotor.blades' })),
      ...reasons.keep.map((r) => ({ says: say`against fewer: ${r}`, link: 'jet.rotor.blades' })),
    ],
    sources: [src.strip],
  }
}

export function surfaceOf(view: View, limits: JetLimits): Finding | undefined {
  const { craft, spec, at, tied } = view
  const { roughness, material } = craft.jet.rotor
  const smooth = { ...spec, rotor: { ...spec.rotor, roughness: smoothTo } }
  const better = solveJet(smooth, at.tiedUp, 0)
  const gain = better.F / tied.F - 1
  // a jet that moves no water gains nothing by smooth blades
  if (!Number.isFinite(gain)) return undefined
  const loss = 1 - tied.T / better.T
  const isPrint = material in printMaterials
  const unsure = isPrint && roughness.source !== 'measured'
  return {
    id: 'jet.surface',
    question: 'push',
    says: say`Blades sanded and sealed to ${inMicrons(smoothTo)} would pull ${inPercent(gain)} more at the same rotation, at ${inPercent(Math.abs(loss))} ${loss > 0 ? 'more' : 'less'} torque${
      unsure
        ? say`; the ${inMicrons(roughness.value)} roughness of the ${material} print is not measured, so efficiency is known to about ±4 points`
        : ''
    }.`,
    value: gain,
    standing: gain > limits.surfaceGain.value ? 'watch' : 'good',
    because: [
      {
        says: say`roughness ${inMicrons(roughness.value)} (${roughness.source})`,
        link: 'jet.rotor.roughness',
      },
      {
        says: say`pump efficiency ${inPercent(tied.eta)} now, ${inPercent(better.eta)} smooth`,
        link: 'jet.rotor',
      },
    ],
    sources: [
      src.strip,
      'Rough plate: Schlichting, Boundary-Layer Theory; sand roughness 5.86 Ra: Adams et al. 2012',
    ],
  }
}

export function rootOf(view: View, limits: JetLimits): Finding | undefined {
  const { craft, spec, tied } = view
  const { rotor } = craft.jet
  const material = printMaterials[rotor.material]
  if (!material) return undefined
  const t = rotor.rootThickness
  const index = (thickness: number) =>
    fatigueIndex(material, bladeLoad(spec.rotor, tied.T, tied.gH, spec.water.density, thickness).stress)
  const now = index(t.value)
  // the cantilever strip itself is right to about half
  const low = 0.5 * index(t.high)
  const high = 1.5 * index(t.low)
  const standing: Standing =
    low > limits.rootSure.value ? 'stop' : now > limits.rootUsual.value ? 'watch' : 'good'
  const stress = bladeLoad(spec.rotor, tied.T, tied.gH, spec.water.density, t.value).stress
  return {
    id: 'jet.root',
    question: 'strength',
    says: say`At full throttle the ${rotor.material} blade roots bend at ${inMpa(stress, 0.1)}, ${inPercent(now)} of what such a print is reckoned to bear for a season (${inPercent(low)} to ${inPercent(high)}). Fragments of a burst impeller are stopped only by ring and duct: never run it dry at speed, and look at the roots for whitening.`,
    ...(now > limits.rootUsual.value
      ? { act: say`a root of ${inMm(rootNeeded(t.value, now), 0.1)} would leave the usual margin` }
      : {}),
    harm: 'will stop the run',
    value: now,
    low,
    high,
    standing,
    because: [
      {
        says: say`root ${inMm(t.value, 0.1)} thick (${t.source}), ${inCount(spec.rotor.blades)} blades`,
        link: 'jet.rotor.root thickness',
      },
      { says: say`torque ${inTorque(tied.T)}, head ${headSays(tied.gH)} tied up`, link: 'jet' },
      ...(material.note ? [{ says: material.note, link: 'jet.rotor.material' }] : []),
    ],
    ...measure('jet.rotor.root thickness', t),
    sources: [
      'Cantilever strip along the blade root, derived, ±50 %',
      'Print strengths: Processes 13 (2025) 2733; fatigue and creep shares from memory; load swing: NASA SP-8052',
    ],
  }
}

export function statorOf(view: View): Finding | undefined {
  const { spec, at, tied } = view
  if (spec.system.stator) return undefined
  const vanes = 6
  const fitted = solveJet({ ...spec, system: { ...spec.system, stator: { vanes } } }, at.tiedUp, 0)
  return {
    id: 'jet.stator',
    question: 'push',
    says: say`Without a stator the jet leaves turning, and at ${atEngine(view, at.tiedUp)} that costs up to ${inNewtons(fitted.F - tied.F)} of ${inNewtons(fitted.F)}.`,
    act: say`fit ${inCount(vanes)} vanes behind the impeller first: ${asChange(inNewtons(fitted.F - tied.F))}`,
    value: tied.F - fitted.F,
    unit: 'N',
    standing: 'watch',
    because: [
      {
        says: say`torque falls from ${inTorque(tied.T)} to ${inTorque(fitted.T)} with vanes`,
        link: 'jet.stator.vanes',
      },
      { says: 'rotation speeds up as the stream narrows to the nozzle', link: 'jet.nozzle.bore' },
    ],
    sources: ['Conservation of angular momentum from rotor to nozzle, derived', src.strip],
  }
}

export function grateOf(craft: Craft, limits: JetLimits): Finding | undefined {
  const grate = grateFromCraft(craft)
  if (!grate) return undefined
  const clean = jetFromCraft(craft)
  const blocked = grateBlockage(grate)
  const weed = { ...clean, system: { ...clean.system, grateLoss: 3 * clean.system.grateLoss + 2 * blocked } }
  const open = { ...clean, system: { ...clean.system, grateLoss: 0 } }
  const n = wettedTip / (Math.PI * clean.rotor.tipDiameter)
  const F = solveJet(open, n, 0).F
  const cost = 1 - solveJet(clean, n, 0).F / F
  const weedCost = 1 - solveJet(weed, n, 0).F / F
  // a jet that moves no water at all has no pull to lose to bars
  if (!Number.isFinite(cost) || !Number.isFinite(weedCost)) return undefined
  const heavy = cost > limits.grateCost.value || blocked > limits.grateCover.value
  return {
    id: 'jet.grate',
    question: 'push',
    says: say`The grate covers ${inPercent(blocked)} of the opening and costs ${inPercent(cost, 0.1)} of the pull clean, about ${inPercent(Math.max(0.01, weedCost))} with weed on it.`,
    ...(heavy
      ? { act: say`thinner bars than ${inMm(grate.bar)}, or gaps wider than ${inMm(grate.gap)}` }
      : {}),
    value: cost,
    standing: heavy ? 'watch' : 'good',
    because: [
      { says: say`bars ${inMm(grate.bar)}, gaps ${inMm(grate.gap)}, ${grate.shape}`, link: 'jet.grate.bar' },
      {
        says: say`loss ${inTimes(clean.system.grateLoss)} of the kinetic energy in the opening`,
        link: 'jet.grate.angle',
      },
    ],
    sources: [src.kirschmer, 'Weed taken as three times the clean loss and twice the covered share: assumed'],
  }
}

export function gapOf(craft: Craft, spec: JetSpec, limits: JetLimits): Finding | undefined {
  const { gap } = craft.jet.rotor
  const n = wettedTip / (Math.PI * spec.rotor.tipDiameter)
  const pull = (g: number) => solveJet({ ...spec, rotor: { ...spec.rotor, gap: g } }, n, 0).F
  const now = pull(spec.rotor.gap)
  const span = (spec.rotor.tipDiameter - spec.rotor.hubDiameter) / 2
  const worst = 1 - inducerGapHead(gap.value / span)
  const [most, least] = [limits.gapWide.value, limits.gapTight.value]
  const wide = gap.value > most
  const tight = gap.value <= least
  const gain = pull(least) / now - 1
  // a jet that moves no water at all has no pull to lose to a gap
  if (!Number.isFinite(gain)) return undefined
  const shown = inMm(gap.value, 0.01)
  return {
    id: 'jet.gap',
    question: 'push',
    says: wide
      ? say`The tip gap of ${shown} is wide: closed to ${inMm(least, 0.01)} the jet would pull ${inPercent(gain, 0.1)} more at the same rotation.`
      : tight
        ? say`The tip gap of ${shown} is tight; worn to ${inMm(most, 0.01)} it would cost ${inPercent(1 - pull(most) / now, 0.1)} of the pull at the same rotation. See that it turns free warm and wet.`
        : say`The tip gap of ${shown} is in order; closed to ${inMm(least, 0.01)} it would pull ${inPercent(gain, 0.1)} more at the same rotation.`,
    ...(wide ? { act: say`fit a ring: past ${inMm(most, 0.01)} one is due (common practice)` } : {}),
    ...(tight ? { act: 'turn it by hand, warm and wet, before the engine does' } : {}),
    value: gap.value,
    low: gap.low,
    high: gap.high,
    unit: 'm',
    standing: wide ? 'watch' : 'good',
    because: [
      { says: say`gap is ${inPercent(gap.value / span, 0.1)} of the blade height`, link: 'jet.rotor.gap' },
      {
        says: say`by the bracket for pump inducers the gap may cost up to ${inPercent(worst)} of the head`,
        link: 'jet.rotor.gap',
      },
    ],
    ...measure('jet.rotor.gap', gap),
    sources: [`${src.inducers}, eq. 54`, src.strip, src.practice],
  }
}
