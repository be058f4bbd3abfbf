/** What a search for a pipe has to say. */
import {
  asChange,
  inCelsius,
  inCount,
  inKelvinStep,
  inKw,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { type ExhaustLimits, exhaustLimits } from './exhaustLimits.ts'
import type { NextChange, PipeAnswer, Room } from './exhaustTypes.ts'
import { beyondRoom, lengthOfPipe } from './pipeShape.ts'

export interface PipeSearchView {
  final: boolean
  now: PipeAnswer
  handbook: PipeAnswer
  found: PipeAnswer
  snappingCost: number
  next: readonly NextChange[]
  band: { from: number; to: number }
  speeds: readonly number[]
  room: Room
  curves: number
}

const method =
  'Simulation of cylinder, crankcase and pipe; search of R. Hooke and T. A. Jeeves, J. ACM 8 (1961) 212; start by G. P. Blair, Design and Simulation of Two-Stroke Engines (1996)'
/** Findings of the question 'breath'; `at` is the craft path of the engine. */
export function pipeFindings(
  v: PipeSearchView,
  at: string,
  limits: ExhaustLimits = exhaustLimits,
): Finding[] {
  const { now, found } = v
  const byThrust = v.speeds.length > 0
  const gain = byThrust ? found.thrust / now.thrust - 1 : found.power / now.power - 1
  const cells =
    found.cells === 'fine' ? 'fine cells (10 mm)' : 'coarse cells (20 mm), still to be decided with fine ones'
  const least = limits.pipeGain.value
  const worthIt = gain > least
  const out: Finding[] = [
    {
      id: `breath.${at}.pipe-search`,
      question: 'breath',
      says: worthIt
        ? say`${v.final ? 'The pipe found' : 'A first pipe'} gives ${asChange(inPercent(gain, 0.1))} ${byThrust ? 'thrust over the speeds that count' : 'power'}: ${powerSays(found)} instead of ${powerSays(now)}${byThrust ? say`, and ${asChange(inNewtons(found.pull - now.pull))} tied up` : ''}.`
        : say`${v.final ? 'No pipe was found' : 'So far no pipe was found'} that beats the present one by more than ${inPercent(least, 0.1)}: it suits this engine and jet.`,
      ...(worthIt && v.final
        ? { act: say`build the pipe found: ${inMm(lengthOfPipe(found.pipe))} from the flange` }
        : {}),
      value: gain,
      unit: '1',
      standing: v.final ? 'good' : 'unknown',
      because: [
        { says: say`both from ${cells}; ${inCount(v.curves)} curves were simulated`, link: `${at}.exhaust` },
        ...(byThrust
          ? [
              {
                says: say`the jet holds the engine at ${inRpm(v.band.from / 60)} to ${inRpm(v.band.to / 60)} from ${inSpeed(v.speeds[0]!)} to ${inSpeed(v.speeds[v.speeds.length - 1]!)}: thrust there is what was sought`,
                link: 'jet.rotor.pitch',
              },
            ]
          : []),
        {
          says: say`exhaust gas ${inCelsius(found.curve.exhaustT)} against ${inCelsius(now.curve.exhaustT)} now`,
        },
        { says: 'differences between two pipes on one engine are far better than either number alone' },
      ],
      sources: [method],
    },
  ]
  if (v.final) out.push(roomOf(v, at, limits))
  if (v.final)
    out.push({
      id: `breath.${at}.pipe-made`,
      question: 'breath',
      says: say`Rounding to lengths of whole millimetres, bores of half ones and tube that is sold ${Math.abs(v.snappingCost) < 0.0005 ? 'costs nothing that shows' : say`${v.snappingCost > 0 ? 'costs' : 'gains'} ${inPercent(Math.abs(v.snappingCost), 0.1)} of what was sought`}.`,
      value: v.snappingCost,
      unit: '1',
      standing: v.snappingCost > limits.madeCost.value ? 'watch' : 'good',
      because: [
        {
          says: say`stinger ${inMm(found.pipe.stinger.bore)} bore, ${inMm(found.pipe.stinger.length)} long`,
        },
      ],
      sources: ['EN 10305-1 tube sizes, from memory'],
    })
  if (found.curve.exhaustT > now.curve.exhaustT + limits.hotter.value)
    out.push({
      id: `breath.${at}.pipe-hot`,
      question: 'breath',
      act: 'richen first, look at the plug and the piston crown after short runs',
      says: say`The pipe found runs ${inKelvinStep(found.curve.exhaustT - now.curve.exhaustT, 1)} hotter than the present one.`,
      value: found.curve.exhaustT,
      unit: 'K',
      standing: 'watch',
      because: [{ says: 'piston seizure is the usual price of a hot pipe (common practice, no source)' }],
      sources: [method],
    })
  return out
}

const powerSays = (a: PipeAnswer): Sentence => say`${inKw(a.power)} at ${inRpm(a.peakAt / 60)}`

function roomOf(v: PipeSearchView, at: string, limits: ExhaustLimits): Finding {
  const beyond = beyondRoom(v.found.pipe, v.room)
  const widest = Math.max(...v.found.pipe.segments.map((s) => s.d1))
  const most = limits.roomBeyond.value
  const sizes = say`${inMm(lengthOfPipe(v.found.pipe))} long from the flange and ${inMm(widest)} wide inside`
  return {
    id: `breath.${at}.pipe-room`,
    question: 'breath',
    says: v.room.given
      ? beyond > most
        ? say`The pipe found is ${sizes}: more than the room of ${inMm(v.room.length)} by ${inMm(v.room.diameter)}.`
        : say`The pipe found is ${sizes}, and fits the room given.`
      : say`The pipe found is ${sizes}; the file says nothing of the room, so the search kept within ${inMm(v.room.length)} by ${inMm(v.room.diameter)}.`,
    value: lengthOfPipe(v.found.pipe),
    unit: 'm',
    standing: v.room.given ? (beyond > most ? 'watch' : 'good') : 'unknown',
    because: [{ says: 'what a new pipe has to fit into', link: `${at}.exhaust.room` }],
    ...(v.room.given
      ? {}
      : {
          measureNext: {
            what: 'the longest and the widest pipe that fits',
            with: 'string and tape',
            minutes: 10,
            path: `${at}.exhaust.room`,
          },
        }),
    sources: ['The craft file'],
  }
}
