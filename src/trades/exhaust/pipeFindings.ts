/** What a search for a pipe has to say. */
import type { Finding } from '../../base/answers/finding.ts'
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
const rpm = (x: number) => `${Math.round(x / 10) * 10} rpm`.replace(/\B(?=(\d{3})+ rpm)/g, ' ')
const mm = (x: number) => `${(1000 * x).toFixed(0)} mm`
const celsius = (t: number) => `${Math.round(t - 273.15)} °C`
const signed = (x: number, digits = 0) => `${x < 0 ? '−' : '+'}${Math.abs(x).toFixed(digits)}`

/** Findings of the question 'breath'; `at` is the craft path of the engine. */
export function pipeFindings(v: PipeSearchView, at: string): Finding[] {
  const { now, found } = v
  const byThrust = v.speeds.length > 0
  const gain = byThrust ? found.thrust / now.thrust - 1 : found.power / now.power - 1
  const cells =
    found.cells === 'fine' ? 'fine cells (10 mm)' : 'coarse cells (20 mm), still to be decided with fine ones'
  const worthIt = gain > 0.015
  const out: Finding[] = [
    {
      id: `breath.${at}.pipe-search`,
      question: 'breath',
      says: worthIt
        ? `${v.final ? 'The pipe found' : 'A first pipe'} gives ${signed(100 * gain, 1)} % ${byThrust ? 'thrust over the speeds that count' : 'power'}: ${powerText(found)} instead of ${powerText(now)}${byThrust ? `, and ${signed(found.pull - now.pull)} N tied up` : ''}.`
        : `${v.final ? 'No pipe was found' : 'So far no pipe was found'} that beats the present one by more than 1.5 %: it suits this engine and jet.`,
      value: gain,
      unit: '1',
      standing: v.final ? 'good' : 'unknown',
      because: [
        { says: `both from ${cells}; ${v.curves} curves were simulated`, link: 'result:pipe search' },
        ...(byThrust
          ? [
              {
                says: `the jet holds the engine at ${rpm(v.band.from)} to ${rpm(v.band.to)} from ${v.speeds[0]!.toFixed(1)} to ${v.speeds[v.speeds.length - 1]!.toFixed(1)} m/s: thrust there is what was sought`,
                link: 'jet.rotor.pitch',
              },
            ]
          : []),
        { says: `exhaust gas ${celsius(found.curve.exhaustT)} against ${celsius(now.curve.exhaustT)} now` },
        { says: 'differences between two pipes on one engine are far better than either number alone' },
      ],
      sources: [method],
    },
  ]
  if (v.final) out.push(roomOf(v, at))
  if (v.final)
    out.push({
      id: `breath.${at}.pipe-made`,
      question: 'breath',
      says: `Rounding to lengths of whole millimetres, bores of half ones and tube that is sold ${Math.abs(v.snappingCost) < 0.0005 ? 'costs nothing that shows' : `${v.snappingCost > 0 ? 'costs' : 'gains'} ${Math.abs(100 * v.snappingCost).toFixed(1)} % of what was sought`}.`,
      value: v.snappingCost,
      unit: '1',
      standing: v.snappingCost > 0.02 ? 'watch' : 'good',
      because: [
        {
          says: `stinger ${(1000 * found.pipe.stinger.bore).toFixed(0)} mm bore, ${mm(found.pipe.stinger.length)} long`,
        },
      ],
      sources: ['EN 10305-1 tube sizes, from memory'],
    })
  if (found.curve.exhaustT > now.curve.exhaustT + 15)
    out.push({
      id: `breath.${at}.pipe-hot`,
      question: 'breath',
      says: `The pipe found runs ${Math.round(found.curve.exhaustT - now.curve.exhaustT)} K hotter than the present one: richen first, look at the plug and the piston crown after short runs.`,
      value: found.curve.exhaustT,
      unit: 'K',
      standing: 'watch',
      because: [{ says: 'piston seizure is the usual price of a hot pipe (common practice, no source)' }],
      sources: [method],
    })
  return out
}

const powerText = (a: PipeAnswer) => `${(a.power / 1000).toFixed(1)} kW at ${rpm(a.peakAt)}`

function roomOf(v: PipeSearchView, at: string): Finding {
  const beyond = beyondRoom(v.found.pipe, v.room)
  const widest = Math.max(...v.found.pipe.segments.map((s) => s.d1))
  const sizes = `${mm(lengthOfPipe(v.found.pipe))} long from the flange and ${mm(widest)} wide inside`
  return {
    id: `breath.${at}.pipe-room`,
    question: 'breath',
    says: v.room.given
      ? beyond > 0.005
        ? `The pipe found is ${sizes}: more than the room of ${mm(v.room.length)} by ${mm(v.room.diameter)}.`
        : `The pipe found is ${sizes}, and fits the room given.`
      : `The pipe found is ${sizes}; the file says nothing of the room, so the search kept within ${mm(v.room.length)} by ${mm(v.room.diameter)}.`,
    value: lengthOfPipe(v.found.pipe),
    unit: 'm',
    standing: v.room.given ? (beyond > 0.005 ? 'watch' : 'good') : 'unknown',
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
