/** Findings about the rotor and what stands round it. */
import type { Finding, Standing } from '../../../base/answers/finding.ts'
import { formatQuantity } from '../../../base/units/format.ts'
import type { Craft } from '../../../craft/index.ts'
import { bladeReasons, compareBlades } from '../advice.ts'
import { bladeLoad } from '../bladeStrength.ts'
import { inducerGapHead } from '../cavitation.ts'
import { grateBlockage } from '../intakeFlow.ts'
import { solveJet } from '../jet.ts'
import { grateFromCraft, jetFromCraft } from '../jetFromCraft.ts'
import type { JetSpec } from '../jetTypes.ts'
import { fatigueIndex, indexAllowed, printMaterials, rootNeeded } from '../printed.ts'
import { length, measure, newton, percent, rpm, src, type View } from './jetView.ts'

/** tip speed at which nothing cavitates, m/s: small changes are compared there */
const wettedTip = 25

export function loadingOf(view: View): Finding {
  const { tied } = view
  const stalled = tied.flags.includes('stall') || tied.flags.includes('deep stall')
  const hub = view.spec.rotor.hubDiameter / view.spec.rotor.tipDiameter
  return {
    id: 'jet.loading',
    question: 'push',
    says: stalled
      ? `Tied up the blades are stalled (diffusion factor ${tied.diffusion.toFixed(2)}, limit 0.6): figures for pull and torque are rough. A larger nozzle or less growth of pitch unloads them.`
      : tied.diffusion > 0.6
        ? `Tied up the blades near the hub are at their limit (diffusion factor ${tied.diffusion.toFixed(2)}, limit 0.6); the rest of the span works normally.`
        : `Tied up the blades work below their stall limit (diffusion factor ${tied.diffusion.toFixed(2)} of 0.6).`,
    value: tied.diffusion,
    standing: stalled ? 'watch' : 'good',
    because: [
      {
        says: `flow is ${percent(tied.advance)} of what the screw would pass without load`,
        link: 'result:flow',
      },
      { says: `hub ${percent(hub)} of the bore`, link: 'jet.rotor.hub' },
      { says: `nozzle ${length(view.spec.system.nozzleDiameter, 'mm')}`, link: 'jet.nozzle.bore' },
    ],
    sources: ['NASA SP-36, Aerodynamic Design of Axial-Flow Compressors (1965), diffusion factor', src.strip],
  }
}

export function bladesOf(view: View): Finding {
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
  const worth = best !== undefined && gain > 0.03
  return {
    id: 'jet.blades',
    question: 'push',
    says: worth
      ? `${best.blades} blades of ${length(best.pitch, 'mm')} pitch would load the engines the same and push ${percent(gain)} more.`
      : `${now} blades are right here: no other number with its pitch matched to the engines pushes more than 3 % better.`,
    value: now,
    standing: worth ? 'watch' : 'good',
    because: [
      ...cases
        .filter((c) => Number.isFinite(c.pitch))
        .map((c) => ({
          says: `${c.blades} blades, ${length(c.pitch, 'mm')}: ${newton(c.thrust)} against ${newton(at.F)} now${c.stalled ? ', stalled' : ''}`,
          link: 'jet.rotor.blades',
        })),
      ...reasons.fewer.map((r) => ({ says: `for fewer: ${r}`, link: 'jet.rotor.blades' })),
      ...reasons.keep.map((r) => ({ says: `against fewer: ${r}`, link: 'jet.rotor.blades' })),
    ],
    sources: [src.strip],
  }
}

export function surfaceOf(view: View): Finding {
  const { craft, spec, at, tied } = view
  const { roughness, material } = craft.jet.rotor
  const smooth = { ...spec, rotor: { ...spec.rotor, roughness: 2e-6 } }
  const better = solveJet(smooth, at.tiedUp, 0)
  const gain = better.F / tied.F - 1
  const loss = 1 - tied.T / better.T
  const isPrint = material in printMaterials
  const unsure = isPrint && roughness.source !== 'measured'
  return {
    id: 'jet.surface',
    question: 'push',
    says: `Blades sanded and sealed to 2 µm would pull ${percent(gain)} more at the same rotation, at ${percent(Math.abs(loss))} ${loss > 0 ? 'more' : 'less'} torque${
      unsure
        ? `; the ${length(roughness.value, 'µm')} roughness of the ${material} print is not measured, so efficiency is known to about ±4 points`
        : ''
    }.`,
    value: gain,
    standing: gain > 0.05 ? 'watch' : 'good',
    because: [
      {
        says: `roughness ${length(roughness.value, 'µm')} (${roughness.source})`,
        link: 'jet.rotor.roughness',
      },
      {
        says: `pump efficiency ${percent(tied.eta)} now, ${percent(better.eta)} smooth`,
        link: 'result:efficiency',
      },
    ],
    sources: [
      src.strip,
      'Rough plate: Schlichting, Boundary-Layer Theory; sand roughness 5.86 Ra: Adams et al. 2012',
    ],
  }
}

export function rootOf(view: View): Finding | undefined {
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
  const standing: Standing = low > 1 ? 'stop' : now > indexAllowed ? 'watch' : 'good'
  const stress = bladeLoad(spec.rotor, tied.T, tied.gH, spec.water.density, t.value).stress
  return {
    id: 'jet.root',
    question: 'strength',
    says: `At full throttle the ${rotor.material} blade roots bend at ${formatQuantity(stress, 'pressure', 'MPa', 2)}, ${percent(now)} of what such a print is reckoned to bear for a season (${percent(low)} to ${percent(high)})${
      now > indexAllowed
        ? `; a root of ${length(rootNeeded(t.value, now), 'mm')} would leave the usual margin`
        : ''
    }. Fragments of a burst impeller are stopped only by ring and duct: never run it dry at speed, and look at the roots for whitening.`,
    value: now,
    low,
    high,
    standing,
    because: [
      {
        says: `root ${length(t.value, 'mm')} thick (${t.source}), ${spec.rotor.blades} blades`,
        link: 'jet.rotor.root thickness',
      },
      {
        says: `torque ${tied.T.toFixed(1)} N·m, head ${tied.gH.toFixed(0)} J/kg tied up`,
        link: 'result:torque',
      },
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
  const fitted = solveJet({ ...spec, system: { ...spec.system, stator: { vanes: 6 } } }, at.tiedUp, 0)
  return {
    id: 'jet.stator',
    question: 'push',
    says: `Without a stator the jet leaves turning, and at ${rpm(view, at.tiedUp)} that costs up to ${newton(fitted.F - tied.F)} of ${newton(fitted.F)}: fit vanes behind the impeller first.`,
    value: tied.F - fitted.F,
    unit: 'N',
    standing: 'watch',
    because: [
      {
        says: `torque falls from ${tied.T.toFixed(1)} to ${fitted.T.toFixed(1)} N·m with vanes`,
        link: 'jet.stator.vanes',
      },
      { says: 'rotation speeds up as the stream narrows to the nozzle', link: 'jet.nozzle.bore' },
    ],
    sources: ['Conservation of angular momentum from rotor to nozzle, derived', src.strip],
  }
}

export function grateOf(craft: Craft): Finding | undefined {
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
  const heavy = cost > 0.03 || blocked > 0.35
  return {
    id: 'jet.grate',
    question: 'push',
    says: `The grate covers ${percent(blocked)} of the opening and costs ${(100 * cost).toFixed(1)} % of the pull clean, about ${Math.max(1, Math.round(100 * weedCost))} % with weed on it.`,
    value: cost,
    standing: heavy ? 'watch' : 'good',
    because: [
      {
        says: `bars ${length(grate.bar, 'mm')}, gaps ${length(grate.gap, 'mm')}, ${grate.shape}`,
        link: 'jet.grate.bar',
      },
      {
        says: `loss ${clean.system.grateLoss.toFixed(2)} of the kinetic energy in the opening`,
        link: 'jet.grate.angle',
      },
    ],
    sources: [src.kirschmer, 'Weed taken as three times the clean loss and twice the covered share: assumed'],
  }
}

export function gapOf(craft: Craft, spec: JetSpec): Finding {
  const { gap } = craft.jet.rotor
  const n = wettedTip / (Math.PI * spec.rotor.tipDiameter)
  const pull = (g: number) => solveJet({ ...spec, rotor: { ...spec.rotor, gap: g } }, n, 0).F
  const now = pull(spec.rotor.gap)
  const span = (spec.rotor.tipDiameter - spec.rotor.hubDiameter) / 2
  const worst = 1 - inducerGapHead(gap.value / span)
  const wide = gap.value > 0.6e-3
  const tight = gap.value <= 0.25e-3
  const gain = pull(0.25e-3) / now - 1
  const part = (x: number) => `${(100 * x).toFixed(1)} %`
  const shown = length(gap.value, 'mm')
  return {
    id: 'jet.gap',
    question: 'push',
    says: wide
      ? `The tip gap of ${shown} is wide: closed to 0.25 mm the jet would pull ${part(gain)} more at the same rotation. Past 0.6 mm a ring is due (common practice).`
      : tight
        ? `The tip gap of ${shown} is tight; worn to 0.6 mm it would cost ${part(1 - pull(0.6e-3) / now)} of the pull at the same rotation. See that it turns free warm and wet.`
        : `The tip gap of ${shown} is in order; closed to 0.25 mm it would pull ${part(gain)} more at the same rotation.`,
    value: gap.value,
    low: gap.low,
    high: gap.high,
    unit: 'm',
    standing: wide ? 'watch' : 'good',
    because: [
      {
        says: `gap is ${(100 * (gap.value / span)).toFixed(1)} % of the blade height`,
        link: 'jet.rotor.gap',
      },
      {
        says: `by the bracket for pump inducers the gap may cost up to ${percent(worst)} of the head`,
        link: 'jet.rotor.gap',
      },
    ],
    ...measure('jet.rotor.gap', gap),
    sources: [`${src.inducers}, eq. 54`, src.strip, src.practice],
  }
}
