/** Findings about the water: cavitation, intake, air. */
import {
  inCm2,
  inDegrees,
  inFlowSpeed,
  inLitresPerSecond,
  inMetres,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
  inTimes,
  withEnds,
} from '../../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../../base/answers/finding.ts'
import { type Sentence, say } from '../../../base/answers/sentence.ts'
import type { JetLimits } from '../jetLimits.ts'
import type { JetPoint } from '../jetTypes.ts'
import { cavitationKnee } from '../knee.ts'
import { rangeOfOnset } from '../onsetRange.ts'
import { buildPumpMap, jetPoint } from '../pumpMap.ts'
import { dipDepth, flowBeforeDip, submergenceNeeded } from '../ventilation.ts'
import { atEngine, measure, src, type View } from './jetView.ts'

export function cavitationTiedOf(view: View, limits: JetLimits): Finding {
  const { craft, spec, at, tied } = view
  const map = buildPumpMap(spec)
  const fastest = 1.6 * at.most
  const knee = cavitationKnee(map, spec, 0, fastest)
  const because: Because[] = [
    {
      says: say`blade cavitation number ${inTimes(tied.Ka, 0.001)}, 3 % of the head goes at ${inTimes(tied.K3, 0.001)}`,
      link: 'jet.duct.rotor depth',
    },
    {
      says: say`tip speed ${inFlowSpeed(Math.PI * spec.rotor.tipDiameter * at.tiedUp, 1)}`,
      link: 'jet.rotor.bore',
    },
    {
      says: say`leading edge radius ${inMm(spec.rotor.leadingEdgeRadius, 0.01)}`,
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
      says: say`Tied up, the impeller stays clear of cavitation: at ${atEngine(view, at.tiedUp)} nothing of its head is lost, nor at ${atEngine(view, fastest)}.`,
      standing: 'good',
    }
  const range = rangeOfOnset(craft, map, spec, 0, fastest, knee.onset)
  const share = at.tiedUp / knee.onset
  const choked = tied.state === 'choked'
  // a choked rotor goes on pumping; it is the pull left that says whether the craft is worth launching
  const most = choked ? jetPoint(map, spec, knee.choke, 0).F : tied.F
  const standing: Standing =
    choked && tied.F < limits.chokedPull.value * most
      ? 'stop'
      : choked || share > limits.onsetShare.value || range.low < at.tiedUp
        ? 'watch'
        : 'good'
  const refill: Sentence | undefined = Number.isFinite(knee.choke)
    ? say`close the throttle to ${atEngine(view, knee.reWet)} to fill it again`
    : undefined
  const onset = withEnds(atEngine(view, knee.onset), {
    low: range.low * at.ratio,
    high: range.high * at.ratio,
  })
  const start = choked
    ? say`Tied up, the impeller runs choked with vapour at ${atEngine(view, at.tiedUp)} and pulls ${inNewtons(tied.F)}; at ${atEngine(view, knee.choke)}, where it chokes, it pulls ${inNewtons(most)}. More throttle only turns it faster.`
    : say`Tied up, cavitation starts to cost head at ${onset}; the engines turn ${atEngine(view, at.tiedUp)}.`
  const then =
    choked || !refill
      ? ''
      : say` Past ${atEngine(view, knee.choke)} it chokes: rotation runs away and pull falls.`
  return {
    ...base,
    says: say`${start}${then}`,
    ...(refill && standing !== 'good' ? { act: refill } : {}),
    value: knee.onset * at.ratio,
    low: range.low * at.ratio,
    high: range.high * at.ratio,
    unit: 'rev/s',
    standing,
    ...measure('jet.duct.rotor depth', craft.jet.duct.rotorDepth),
  }
}

export function cavitationTopOf(top: JetPoint, limits: JetLimits): Finding {
  const margin = top.Ka / top.K3
  const good = margin >= limits.topMargin.value
  return {
    id: 'jet.cavitation-top',
    question: 'push',
    says: good
      ? say`Under way at ${inSpeed(top.V)} the impeller runs ${inTimes(margin, 0.1)} times clear of losing head to vapour.`
      : say`Under way at ${inSpeed(top.V)} the impeller is ${top.state}: its cavitation number is ${inTimes(margin)} of where 3 % of the head goes.`,
    value: margin,
    standing: good ? 'good' : 'watch',
    because: [
      {
        says: say`suction specific speed ${inTimes(top.Nss, 0.1)}; 4 to 4.4 is what long-lived jets run at (common practice)`,
        link: 'jet',
      },
      { says: say`impeller ${inRpm(top.n)}`, link: 'drive.ratio' },
    ],
    sources: [src.inducers, src.practice],
  }
}

export function intakeOf(view: View, top: JetPoint, limits: JetLimits): Finding {
  const [least, most] = [limits.intakeSlow.value, limits.intakeFast.value]
  const low = top.IVR < least
  const high = top.IVR > most
  return {
    id: 'jet.intake',
    question: 'push',
    says: say`At ${inSpeed(top.V)} water moves through the intake at ${inPercent(top.IVR)} of the boat’s speed${
      low
        ? say`; below ${inPercent(least)} it spills over the lip and may cavitate there`
        : high
          ? say`; above ${inPercent(most)} it breaks away from the ramp`
          : ', as it should'
    }.`,
    value: top.IVR,
    standing: low || high ? 'watch' : 'good',
    because: [
      { says: say`flow ${inLitresPerSecond(top.Q)}`, link: 'jet.nozzle.bore' },
      { says: say`ramp ${inDegrees(view.craft.jet.intake.ramp.value, 1)}`, link: 'jet.intake.ramp' },
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
  const below = clear > 0.2 * view.at.tiedUp ? say` below about ${atEngine(view, clear)},` : ''
  const has = say`Held still at full throttle the intake has ${inMetres(way)} of water to the nearest surface`
  const test = 'Pull over rpm squared at three throttles must agree; where it falls off, air is drawn'
  const says = !enough
    ? say`${has} and is likely to draw air: a dip in it reaches ${inMetres(dip)} down. Judge the pull${below} with weight aft. ${test}.`
    : way < swirl.needed
      ? say`${has}; a dip draws air from ${inMetres(dip)}, so the pull tied up counts unless a swirl stands at the edge of the bottom. ${test}: weight aft, deeper water, and again.`
      : say`${has}, more than even a swirl draws air through (${inMetres(swirl.needed)}).`
  return {
    id: 'jet.air',
    question: 'push',
    says,
    ...(enough
      ? {}
      : {
          act: 'tie it up in deep water with weight aft, and compare pull over rpm squared at three throttles',
        }),
    value: way,
    unit: 'm',
    standing: enough ? 'good' : 'watch',
    because: [
      {
        says: say`flow ${inLitresPerSecond(tied.Q)} through ${inCm2(area)} of opening`,
        link: 'jet.intake.length',
      },
      { says: say`opening ${inMetres(deep)} under the surface`, link: 'jet.duct.rotor depth' },
      {
        says: say`${inMetres(edge)} from the opening to the nearest edge of the bottom`,
        link: rear < side ? 'jet.intake.front' : 'hull.chine beam',
      },
      {
        says: say`an open sump would want ${inMetres(swirl.needed)} for fear of swirl, inlet Froude number ${inTimes(swirl.froude)}`,
        link: 'jet.intake.length',
      },
    ],
    ...measure('jet.duct.rotor depth', duct.rotorDepth),
    sources: [src.dip, src.hi, 'The bottom as a lid, the surface past its edge: derived, rough'],
  }
}
