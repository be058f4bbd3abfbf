/** Findings about the water: cavitation, intake, air. */
import type { Because, Finding, Standing } from '../../../base/answers/finding.ts'
import { formatQuantity } from '../../../base/units/format.ts'
import type { JetPoint } from '../jetTypes.ts'
import { cavitationKnee } from '../knee.ts'
import { rangeOfOnset } from '../onsetRange.ts'
import { buildPumpMap, jetPoint } from '../pumpMap.ts'
import { dipDepth, flowBeforeDip, submergenceNeeded } from '../ventilation.ts'
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
  // the nearest surface lies past the edge of the bottom, which is a lid over the opening
  const rear = Math.max(0, intake.front.value - intake.length.value)
  const side = Math.max(0, (craft.hull.chineBeam.value - intake.width.value) / 2)
  const edge = Math.min(rear, side)
  const deep = Math.max(0, duct.rotorDepth.value + spec.rotor.tipDiameter)
  const way = Math.hypot(deep, edge)
  const dip = dipDepth(tied.Q)
  const swirl = submergenceNeeded(area, tied.Q)
  const enough = way >= dip
  // flow goes with rotation when nothing cavitates
  const clear = tied.Q > 0 ? (view.at.tiedUp * flowBeforeDip(way)) / tied.Q : 0
  const has = `${length(way, 'm')} of water to the nearest surface`
  const hold =
    'Pull over rpm squared at three throttles must agree; where it falls off, air is drawn: put weight aft, move to deeper water and try again.'
  const says = !enough
    ? `Held still at full throttle the intake is likely to draw air: it has ${has}, and a dip reaches ${length(dip, 'm')} down to it. Judge the pull${clear > 0.2 * view.at.tiedUp ? ` below about ${rpm(view, clear)},` : ''} with weight aft. ${hold}`
    : way < swirl.needed
      ? `Held still at full throttle the intake has ${has}; a dip in it draws air from ${length(dip, 'm')}, so the pull tied up counts unless a swirl stands at the edge of the bottom. ${hold}`
      : `Held still at full throttle the intake has ${has}, more than even a swirl draws air through (${length(swirl.needed, 'm')}).`
  return {
    id: 'jet.air',
    question: 'push',
    says,
    value: way,
    unit: 'm',
    standing: enough ? 'good' : 'watch',
    because: [
      {
        says: `flow ${formatQuantity(tied.Q, 'volumeFlow', 'L/s', 3)} through ${formatQuantity(area, 'area', 'cm²', 3)} of opening`,
        link: 'result:flow',
      },
      { says: `opening ${length(deep, 'm')} under the surface`, link: 'jet.duct.rotor depth' },
      {
        says: `${length(edge, 'm')} from the opening to the nearest edge of the bottom`,
        link: rear < side ? 'jet.intake.front' : 'hull.chine beam',
      },
      {
        says: `an open sump would want ${length(swirl.needed, 'm')} for fear of swirl, inlet Froude number ${swirl.froude.toFixed(2)}`,
        link: 'jet.intake.length',
      },
    ],
    ...measure('jet.duct.rotor depth', duct.rotorDepth),
    sources: [src.dip, src.hi, 'The bottom as a lid, the surface past its edge: derived, rough'],
  }
}
