/** Findings about the water: cavitation, intake, air. */
import type { Because, Finding, Standing } from '../../../base/answers/finding.ts'
import { formatQuantity } from '../../../base/units/format.ts'
import type { JetPoint } from '../jetTypes.ts'
import { cavitationKnee } from '../knee.ts'
import { rangeOfOnset } from '../onsetRange.ts'
import { buildPumpMap, jetPoint } from '../pumpMap.ts'
import { flowWithoutAir, submergenceNeeded } from '../ventilation.ts'
import { length, measure, newton, percent, rpm, src, type View } from './jetView.ts'

export function cavitationTiedOf(view: View): Finding {
  const { craft, spec, at, tied } = view
  const map = buildPumpMap(spec)
  const fastest = 1.6 * at.most
  const knee = cavitationKnee(map, spec, 0, fastest)
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
      says: `Tied up, the impeller stays clear of cavitation: at ${rpm(view, at.tiedUp)} nothing of its head is lost, nor at ${rpm(view, fastest)}.`,
      standing: 'good',
    }
  const range = rangeOfOnset(craft, map, spec, 0, fastest, knee.onset)
  const share = at.tiedUp / knee.onset
  const choked = tied.state === 'choked'
  // a choked rotor goes on pumping; it is the pull left that says whether the craft is worth launching
  const most = choked ? jetPoint(map, spec, knee.choke, 0).F : tied.F
  const standing: Standing =
    choked && tied.F < 0.5 * most ? 'stop' : choked || share > 1 || range.low < at.tiedUp ? 'watch' : 'good'
  const fill = Number.isFinite(knee.choke)
    ? `close the throttle to ${rpm(view, knee.reWet)} to fill it again.`
    : ''
  const start = choked
    ? `Tied up, the impeller runs choked with vapour at ${rpm(view, at.tiedUp)} and pulls ${newton(tied.F)}; at ${rpm(view, knee.choke)}, where it chokes, it pulls ${newton(most)}. More throttle only turns it faster: ${fill}`
    : `Tied up, cavitation starts to cost head at ${rpm(view, knee.onset)} (${rpm(view, range.low)} to ${rpm(view, range.high)}); the engines turn ${rpm(view, at.tiedUp)}.`
  const then =
    choked || fill === ''
      ? ''
      : ` Past ${rpm(view, knee.choke)} it chokes: rotation runs away and pull falls; ${fill}`
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

export function cavitationTopOf(top: JetPoint): Finding {
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

export function intakeOf(view: View, top: JetPoint): Finding {
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

export function airOf(view: View): Finding {
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
  // flow goes with rotation when nothing cavitates
  const clear = tied.Q > 0 ? (view.at.tiedUp * flowWithoutAir(area, path)) / tied.Q : 0
  const judge =
    clear > 0.2 * view.at.tiedUp ? `Judge the pull below about ${rpm(view, clear)}, or let` : 'Let'
  return {
    id: 'jet.air',
    question: 'push',
    says: enough
      ? `Held still at full throttle the intake has ${length(path, 'm')} of water on the way to the air and needs ${length(needed, 'm')}.`
      : `Held still at full throttle the intake is likely to draw air: it needs ${length(needed, 'm')} of water on the way and has about ${length(path, 'm')}. ${judge} the craft move, before blaming the impeller.`,
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
