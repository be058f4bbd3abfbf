/** What the jet has to say for itself: findings of the question "How will it go?". */
import type { Because, Finding, MeasureNext, Standing } from '../answers/finding.ts'
import { type Craft, fieldAt } from '../craft/index.ts'
import { formatQuantity } from '../units/format.ts'
import { bladeReasons, compareBlades } from './advice.ts'
import { inducerGapHead } from './cavitation.ts'
import { grateFromCraft, jetFromCraft } from './fromCraft.ts'
import { grateBlockage } from './intake.ts'
import { solveJet } from './jet.ts'
import { cavitationKnee } from './knee.ts'
import { rangeOfOnset } from './onsetRange.ts'
import { buildPumpMap } from './pumpMap.ts'
import type { JetPoint, JetSpec } from './types.ts'
import { flowWithoutAir, submergenceNeeded } from './ventilation.ts'

/** Where the balance found the impeller running; rev/s and m/s. */
export interface JetSituation {
  /** impeller rotation tied up, and fastest the engines can turn it */
  tiedUp: number
  most: number
  /** engine turns per impeller turn, so that texts can speak of engine rotation */
  ratio: number
  /** rotation and speed at the top; absent when there is none */
  top?: { rotation: number; V: number }
}

/** What a solved balance must hold for its jet to be spoken of. */
interface Balanced {
  tiedUp: { rotation: number; impellerRotation: number }
  top?: { impellerRotation: number; speed: number }
  matching: { rotation: readonly number[] }
}

/** The situation of the first jet of a solved balance. */
export function situationOf(balance: Balanced): JetSituation {
  const ratio = balance.tiedUp.rotation / balance.tiedUp.impellerRotation
  const { top } = balance
  return {
    tiedUp: balance.tiedUp.impellerRotation,
    most: Math.max(...balance.matching.rotation) / ratio,
    ratio,
    ...(top ? { top: { rotation: top.impellerRotation, V: top.speed } } : {}),
  }
}

interface View {
  craft: Craft
  spec: JetSpec
  at: JetSituation
  tied: JetPoint
  top?: JetPoint
}

const src = {
  strip: 'Strip model with lattice turning and cascade losses (Weinig 1935; Lieblein 1959; Denton 1993)',
  inducers: 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)',
  hi: 'ANSI/HI 9.8, Rotodynamic Pumps for Pump Intake Design',
  kirschmer: 'O. Kirschmer (1926), losses of trash racks',
  practice: 'common practice, no source',
}

const percent = (x: number) => `${Math.round(100 * x)} %`
const newton = (x: number) => `${Math.round(x)} N`
const length = (x: number, unit: 'mm' | 'cm' | 'm' | 'µm') => formatQuantity(x, 'length', unit, 2)

/** Builds every jet finding. Without a situation (no torque curve yet) only what needs no rotation is said. */
export function jetFindings(craft: Craft, at?: JetSituation): Finding[] {
  const spec = jetFromCraft(craft)
  const out: Finding[] = [grateOf(craft), gapOf(craft, spec)].filter((f) => f !== undefined)
  if (!at || !(at.tiedUp > 0)) return out
  const view: View = { craft, spec, at, tied: solveJet(spec, at.tiedUp, 0) }
  if (at.top && at.top.rotation > 0) view.top = solveJet(spec, at.top.rotation, at.top.V)
  out.push(cavitationTiedOf(view))
  if (view.top) out.push(cavitationTopOf(view.top), intakeOf(view, view.top))
  out.push(airOf(view), loadingOf(view), bladesOf(view), surfaceOf(view))
  const bare = statorOf(view)
  if (bare) out.push(bare)
  return out
}

/** rotation as the builder sees it, at the engine */
const rpm = (view: View, n: number) => `${Math.round((n * view.at.ratio * 60) / 10) * 10} rpm`

function measure(path: string, spec: { source: string }): { measureNext?: MeasureNext } {
  const how = spec.source === 'guess' || spec.source === 'assumed' ? fieldAt(path)?.measure : undefined
  return how ? { measureNext: { ...how, path } } : {}
}

function cavitationTiedOf(view: View): Finding {
  const { craft, spec, at, tied } = view
  const map = buildPumpMap(spec)
  const most = 1.6 * at.most
  const knee = cavitationKnee(map, spec, 0, most)
  const because: Because[] = [
    {
      says: `blade cavitation number ${tied.Ka.toFixed(3)}, 3 % of the head goes at ${tied.K3.toFixed(3)}`,
      link: 'result:cavitation',
    },
    {
      says: `tip speed ${(Math.PI * spec.rotor.tipDiameter * at.tiedUp).toFixed(0)} m/s`,
      link: 'jet.rotor.bore',
    },
    {
      says: `leading edge radius ${length(spec.rotor.leadingEdgeRadius, 'mm')}`,
      link: 'jet.rotor.leading edge radius',
    },
  ]
  const base = {
    id: 'jet.cavitation-tied',
    question: 'push' as const,
    because,
    sources: [src.inducers, src.strip],
  }
  if (!Number.isFinite(knee.onset))
    return {
      ...base,
      says: `Tied up, the impeller stays clear of cavitation: at ${rpm(view, at.tiedUp)} nothing of its head is lost, nor at ${rpm(view, most)}.`,
      standing: 'good',
    }
  const range = rangeOfOnset(craft, map, spec, 0, most, knee.onset)
  const share = at.tiedUp / knee.onset
  const choked = tied.state === 'choked'
  const standing: Standing = choked ? 'stop' : share > 1 || range.low < at.tiedUp ? 'watch' : 'good'
  const then = Number.isFinite(knee.choke)
    ? ` Past ${rpm(view, knee.choke)} it chokes: rotation runs away and pull falls; close the throttle to ${rpm(view, knee.reWet)} to fill it again.`
    : ''
  const start = choked
    ? `Tied up, the impeller runs choked with vapour at ${rpm(view, at.tiedUp)} and gives only ${newton(tied.F)}.`
    : `Tied up, cavitation starts to cost head at ${rpm(view, knee.onset)} (${rpm(view, range.low)} to ${rpm(view, range.high)}); the engines turn ${rpm(view, at.tiedUp)}.`
  return {
    ...base,
    says: start + then,
    value: knee.onset * at.ratio,
    low: range.low * at.ratio,
    high: range.high * at.ratio,
    unit: 'rev/s',
    standing,
    ...measure('jet.duct.rotor depth', craft.jet.duct.rotorDepth),
  }
}

function cavitationTopOf(top: JetPoint): Finding {
  const margin = top.Ka / top.K3
  const good = top.state === 'wet'
  return {
    id: 'jet.cavitation-top',
    question: 'push',
    says: good
      ? `Under way at ${formatQuantity(top.V, 'speed', 'km/h', 2)} the impeller runs ${margin.toFixed(1)} times clear of losing head to vapour.`
      : `Under way at ${formatQuantity(top.V, 'speed', 'km/h', 2)} the impeller is ${top.state}: its cavitation number is ${margin.toFixed(2)} of where 3 % of the head goes.`,
    value: margin,
    standing: top.state === 'wet' ? 'good' : top.state === 'cavitating' && margin > 1 ? 'good' : 'watch',
    because: [
      {
        says: `suction specific speed ${top.Nss.toFixed(1)}; 4 to 4.4 is what long-lived jets run at (common practice)`,
        link: 'result:Nss',
      },
      { says: `impeller ${Math.round(top.n * 60)} rpm`, link: 'result:rotation' },
    ],
    sources: [src.inducers, src.practice],
  }
}

function intakeOf(view: View, top: JetPoint): Finding {
  const low = top.IVR < 0.5
  const high = top.IVR > 1.5
  return {
    id: 'jet.intake',
    question: 'push',
    says: `At ${formatQuantity(top.V, 'speed', 'km/h', 2)} water moves through the intake at ${percent(top.IVR)} of the boat’s speed${
      low
        ? '; below half it spills over the lip and may cavitate there'
        : high
          ? '; above 150 % it breaks away from the ramp'
          : ', as it should'
    }.`,
    value: top.IVR,
    standing: low || high ? 'watch' : 'good',
    because: [
      { says: `flow ${formatQuantity(top.Q, 'volumeFlow', 'L/s', 3)}`, link: 'result:flow' },
      {
        says: `ramp ${formatQuantity(view.craft.jet.intake.ramp.value, 'angle', 'deg', 2)}`,
        link: 'jet.intake.ramp',
      },
    ],
    sources: ['Velocity in the throat over boat speed, 0.6 to 0.9 wanted: common practice, no source'],
  }
}

function airOf(view: View): Finding {
  const { craft, spec, tied } = view
  const { intake, duct } = craft.jet
  const area = spec.system.intakeArea
  const sub = submergenceNeeded(area, tied.Q)
  // shortest way for air: down the transom and forward to the opening, with the bottom as a lid over it
  const rear = Math.max(0, intake.front.value - intake.length.value)
  const side = Math.max(0, (craft.hull.chineBeam.value - intake.width.value) / 2)
  const deep = Math.max(0, duct.rotorDepth.value + spec.rotor.tipDiameter)
  const path = deep + Math.min(rear, side)
  const needed = sub.needed
  const enough = path >= needed
  const clear = flowWithoutAir(area, path)
  return {
    id: 'jet.air',
    question: 'push',
    says: enough
      ? `Held still at full throttle the intake has ${length(path, 'm')} of water on the way to the air and needs ${length(needed, 'm')}.`
      : `Held still at full throttle the intake is likely to draw air: it needs ${length(needed, 'm')} of water on the way and has about ${length(path, 'm')}. Judge the pull at ${formatQuantity(clear, 'volumeFlow', 'L/s', 2)} or less, or let the craft move, before blaming the impeller.`,
    value: path,
    unit: 'm',
    standing: enough ? 'good' : 'watch',
    because: [
      {
        says: `flow ${formatQuantity(tied.Q, 'volumeFlow', 'L/s', 3)} through ${formatQuantity(area, 'area', 'cm²', 3)} of opening`,
        link: 'result:flow',
      },
      { says: `inlet Froude number ${sub.froude.toFixed(2)}`, link: 'jet.intake.length' },
      {
        says: `${length(Math.min(rear, side), 'm')} from the opening to the nearest edge of the bottom`,
        link: rear < side ? 'jet.intake.front' : 'hull.chine beam',
      },
    ],
    ...measure('jet.duct.rotor depth', duct.rotorDepth),
    sources: [src.hi, 'Counting the way round the bottom’s edge as water cover: derived, rough'],
  }
}

function loadingOf(view: View): Finding {
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

function bladesOf(view: View): Finding {
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

const printed = new Set(['PLA', 'PETG', 'ASA', 'ABS', 'PC', 'PA12', 'PA12-CF', 'PA6-CF'])

function surfaceOf(view: View): Finding {
  const { craft, spec, at, tied } = view
  const { roughness, material } = craft.jet.rotor
  const smooth = { ...spec, rotor: { ...spec.rotor, roughness: 2e-6 } }
  const better = solveJet(smooth, at.tiedUp, 0)
  const gain = better.F / tied.F - 1
  const loss = 1 - tied.T / better.T
  const isPrint = printed.has(material)
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
    standing: gain > 0.03 ? 'watch' : 'good',
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

function statorOf(view: View): Finding | undefined {
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

function grateOf(craft: Craft): Finding | undefined {
  const grate = grateFromCraft(craft)
  if (!grate) return undefined
  const clean = jetFromCraft(craft)
  const blocked = grateBlockage(grate)
  const weed = { ...clean, system: { ...clean.system, grateLoss: 3 * clean.system.grateLoss + 2 * blocked } }
  const open = { ...clean, system: { ...clean.system, grateLoss: 0 } }
  const n = 38 / (Math.PI * clean.rotor.tipDiameter)
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

function gapOf(craft: Craft, spec: JetSpec): Finding {
  const { gap } = craft.jet.rotor
  const n = 38 / (Math.PI * spec.rotor.tipDiameter)
  const tight = { ...spec, rotor: { ...spec.rotor, gap: 0.25e-3 } }
  const now = solveJet(spec, n, 0).F
  const gain = solveJet(tight, n, 0).F / now - 1
  const span = (spec.rotor.tipDiameter - spec.rotor.hubDiameter) / 2
  const worst = 1 - inducerGapHead(gap.value / span)
  const wide = gap.value > 0.6e-3
  return {
    id: 'jet.gap',
    question: 'push',
    says: wide
      ? `The tip gap of ${length(gap.value, 'mm')} is wide: closed to 0.25 mm the jet would pull ${percent(gain)} more at the same rotation. Past 0.6 mm a ring is due (common practice).`
      : `The tip gap of ${length(gap.value, 'mm')} is in order; closed to 0.25 mm it would pull ${(100 * gain).toFixed(1)} % more at the same rotation.`,
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
