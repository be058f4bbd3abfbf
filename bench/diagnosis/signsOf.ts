/**
 * What somebody sees of a hidden state: rules on the states of the parts, with chance where the eye is not sure and one answer in twelve
 * simply wrong. Written apart from the ranking's own table of signs.
 */
import type { Random } from '../../src/base/numerics/random.ts'
import { observables } from '../../src/whole/faults/observables.ts'
import type { Begins, Hidden } from './hidden.ts'

export interface Seen {
  hidden: Hidden
  begins: Begins
  /** over what the file predicts */
  rotation: number
  /** thrust over rotation squared, over what is predicted */
  push: number
  /** speed over what goes with the thrust */
  pace: number
  /** lines heard: engines that fire, and whether they turn apart */
  firing: number
  apart: boolean
  warm: boolean
}

const wrong = 1 / 12

/** Chances of states by name; what is left goes to the first. */
type Chances = Readonly<Record<string, number>>

export function seenOf(id: string, s: Seen, rng: Random, mistakes = wrong): string {
  const states = observables.find((o) => o.id === id)!.states
  if (rng.next() < mistakes) return states[Math.floor(rng.next() * states.length)]!
  let u = rng.next()
  for (const [state, p] of Object.entries(chancesOf(id, s))) {
    u -= p
    if (u <= 0 && states.includes(state)) return state
  }
  return quiet[id] ?? states[0]!
}

/** Chance that `state` is said of an observable, mistakes counted in. */
export function shareOf(id: string, s: Seen, state: string, mistakes: number): number {
  const states = observables.find((o) => o.id === id)!.states
  const told = Object.entries(chancesOf(id, s)).filter(([x]) => states.includes(x))
  const rest = Math.max(0, 1 - told.reduce((a, [, p]) => a + Math.min(1, p), 0))
  const own = Math.min(1, told.find(([x]) => x === state)?.[1] ?? 0)
  const usual = state === (quiet[id] ?? states[0]!) ? rest : 0
  return mistakes / states.length + (1 - mistakes) * (own + usual)
}

const quiet: Readonly<Record<string, string>> = {
  rpm: 'as predicted',
  pull: 'as predicted',
  pace: 'as predicted',
  choke: 'no change',
  cap: 'no change',
}

const bin = (x: number, edges: readonly number[], names: readonly string[]): Chances => ({
  [names[edges.findIndex((e) => x < e)] ?? names.at(-1)!]: 1,
})

function chancesOf(id: string, s: Seen): Chances {
  const h = s.hidden
  const e = h.engines
  const lean = Math.max(...e.map((x) => x.mixture))
  const richest = Math.min(...e.filter((x) => x.fires).map((x) => x.mixture), 1)
  const missed = Math.max(...e.filter((x) => x.fires).map((x) => x.missed), 0)
  const wet = Math.max(...e.map((x) => x.wetPipe))
  const dunk = Math.max(...e.map((x) => x.wetPlug))
  const heat = Math.max(...e.map((x) => x.heat))
  const dead = e.filter((x) => !x.fires).length
  const spread = Math.max(...e.map((x) => x.torque)) - Math.min(...e.map((x) => x.torque))
  const leanness = Math.max(0, Math.min(1, (lean - 0.95) * 5))
  switch (id) {
    case 'rpm':
      return bin(s.rotation, [0.75, 0.92, 1.06], ['far low', 'low', 'as predicted', 'high'])
    case 'pull':
      return bin(s.push, [0.8, 1.15], ['low', 'as predicted', 'high'])
    case 'pace':
      return bin(s.pace, [0.86], ['slow', 'as predicted'])
    case 'raced':
      return h.open > 0
        ? { stayed: 0.9 }
        : h.slips > 0
          ? { stayed: 0.7, 'came back': 0.12 }
          : h.air > 0.2
            ? { 'came back': 0.75, stayed: 0.08 }
            : h.weed > 0.3
              ? { 'came back': 0.2, stayed: 0.25 }
              : h.gravel
                ? { 'came back': 0.35 }
                : { 'came back': 0.05 }
    case 'apart':
      return s.apart ? { apart: 0.9 } : {}
    case 'hunts':
      return { hunting: Math.max(0.05, 0.6 * leanness, dunk > 0.5 ? 0.5 : 0) }
    case 'lasted':
      return { [s.begins]: 0.85 }
    case 'choke':
      return leanness > 0.2
        ? { helped: 0.6 + 0.3 * leanness, 'no change': 0.1 }
        : richest < 0.76
          ? { 'made it worse': 0.85 }
          : missed > 0.1
            ? { 'no change': 0.7, 'made it worse': 0.2 }
            : { 'made it worse': 0.45, helped: 0.08 }
    case 'opening':
      return leanness > 0.3
        ? { bogged: 0.5, 'only part way': 0.25, hung: e.some((x) => x.leak) ? 0.2 : 0.05 }
        : h.pitch > 0 || h.stepped
          ? { bogged: 0.55, 'only part way': 0.12 }
          : richest < 0.76 || wet > 0.4 || missed > 0.15
            ? { bogged: 0.45, 'only part way': 0.3 }
            : h.air > 0.3 || h.gravel
              ? { 'only part way': 0.5 }
              : e.some((x) => x.leak)
                ? { hung: 0.5 }
                : { bogged: 0.06 }
    case 'sounded':
      return wet > 0.4
        ? { muffled: 0.65, burbling: 0.1 }
        : missed > 0.1
          ? { missing: 0.8 }
          : richest < 0.76
            ? { burbling: 0.7, muffled: 0.1 }
            : leanness > 0.3
              ? { missing: 0.3, pinking: 0.25 }
              : heat > 0.8
                ? { pinking: 0.4 }
                : h.gravel
                  ? { gravelly: 0.75 }
                  : h.weed > 0.5
                    ? { gravelly: 0.35 }
                    : { burbling: 0.05, gravelly: h.air > 0.5 ? 0.2 : 0.03 }
    case 'engines':
      return dead > 0
        ? { 'only one': 0.88, unlike: 0.08 }
        : spread > 0.12 || missed > 0.2
          ? { unlike: 0.55, 'only one': 0.07 }
          : { unlike: 0.07 }
    case 'jet':
      return h.open > 0
        ? { weak: 0.92 }
        : h.air > 0.2
          ? { frothy: 0.82, weak: 0.08 }
          : h.weed > 0.3
            ? { weak: 0.45, pulsing: 0.25, frothy: 0.2 }
            : h.gravel
              ? { frothy: 0.4, weak: 0.2 }
              : h.gap || h.bore || h.slips > 0
                ? { weak: 0.6 }
                : s.rotation < 0.8
                  ? { weak: h.pitch > 0 ? 0.15 : 0.55 }
                  : {}
    case 'plug':
      return dunk > 0.5
        ? { 'water drops': 0.7, wet: 0.2 }
        : e.some((x) => x.locked)
          ? { 'silver specks': 0.3, white: 0.5 }
          : dead > 0 && lean < 1.1
            ? { wet: 0.6, 'black and dry': 0.2, tan: 0.1 }
            : leanness > 0.2
              ? { white: 0.75, tan: 0.2 }
              : richest < 0.76
                ? { 'black and dry': 0.7, wet: 0.22 }
                : missed > 0.1
                  ? { 'black and dry': 0.35, wet: 0.35, tan: 0.25 }
                  : wet > 0.4
                    ? { 'water drops': 0.35, 'black and dry': 0.25, tan: 0.2 }
                    : e.some((x) => x.oil > 0)
                      ? { 'black and dry': 0.5, tan: 0.35 }
                      : heat > 0.7
                        ? { white: 0.5, tan: 0.4 }
                        : { tan: 0.8, 'black and dry': 0.1, white: 0.06 }
    case 'heat':
      return h.slips > 0
        ? { 'coupling hot': 0.7 }
        : heat > 0.7
          ? { 'very hot': 0.85 }
          : dead > 0
            ? { 'one cool': 0.55 }
            : leanness > 0.4
              ? { 'very hot': 0.5 }
              : richest < 0.72
                ? { 'one cool': 0.25 }
                : { 'very hot': h.pitch > 0 ? 0.3 : 0.08 }
    case 'smoke':
      return h.slips > 0.4
        ? { rubber: 0.55, heavy: 0.08 }
        : wet > 0.4 || dunk > 0.5
          ? { steam: 0.5, heavy: 0.08 }
          : richest < 0.76 || e.some((x) => x.oil > 0)
            ? { heavy: 0.7 }
            : leanness > 0.4
              ? { none: 0.4, heavy: 0.03 }
              : { heavy: 0.1 }
    case 'cap':
      return h.ventShut ? { recovered: 0.93 } : { recovered: 0.03 }
    case 'trim':
      return h.trim > 0
        ? { 'bow up': 0.85 }
        : h.trim < 0
          ? { 'bow down': 0.85 }
          : h.bilge > 0.6
            ? { 'bow up': 0.4, 'bow down': 0.2 }
            : dead > 0
              ? { 'bow down': 0.3 }
              : { 'bow up': 0.1, 'bow down': 0.1 }
    case 'hand':
      return e.some((x) => x.locked)
        ? { locked: 0.9 }
        : Math.min(...e.map((x) => x.compression)) < 0.72
          ? { 'no compression': 0.6 }
          : heat > 0.9
            ? { stiff: 0.3 }
            : { stiff: 0.04 }
    case 'idle':
      return e.some((x) => x.leak)
        ? { high: 0.65, dies: 0.1 }
        : wet > 0.4
          ? { dies: 0.45, low: 0.3 }
          : missed > 0.15
            ? { dies: 0.5, low: 0.15 }
            : leanness > 0.3
              ? { high: 0.3, dies: 0.25 }
              : { dies: 0.08, low: 0.08, high: 0.06 }
    case 'start':
      return e.some((x) => x.locked)
        ? { 'not at all': 0.7 }
        : dunk > 0.5
          ? { hard: 0.4, 'not at all': 0.4 }
          : missed > 0.9
            ? { hard: 0.5 }
            : leanness > 0.3
              ? { hard: 0.3, 'only with choke': 0.25 }
              : !h.mixed || e.some((x) => x.compression < 0.85)
                ? { hard: 0.5 }
                : { hard: 0.12 }
    case 'stopped':
      return e.some((x) => x.locked)
        ? { 'at once': 0.85 }
        : h.ventShut
          ? { 'faded out': 0.6 }
          : missed > 0.15
            ? { 'at once': 0.4 }
            : { 'faded out': 0.08, 'at once': 0.08 }
    case 'line':
      return h.line === 'full' ? { bubbles: h.ventShut ? 0.25 : 0.06 } : { [h.line]: 0.85 }
    case 'pipes':
      return dead > 0 ? { 'one cold': 0.88 } : { 'one cold': spread > 0.25 ? 0.15 : 0.05 }
    case 'stream':
      return heat > 0.9 ? { weak: 0.35, none: 0.15 } : { weak: 0.06 }
    case 'intake':
      return h.weed > 0.2 ? { weed: 0.7, stones: 0.1, 'part blocked': 0.12 } : { weed: 0.07 }
    case 'rotor':
      return h.gap ? { rubbed: 0.45, nicked: 0.15 } : { nicked: h.gravel ? 0.25 : 0.06 }
    case 'coupling':
      return h.coupling === 'as made'
        ? { dust: 0.03 }
        : h.coupling === 'slipped marks'
          ? { 'slipped marks': 0.45, hot: 0.25, dust: 0.15 }
          : { [h.coupling]: 0.9 }
    case 'shake':
      return h.weed > 0.4 || h.open > 0
        ? { 'more than before': 0.5 }
        : { 'at one speed': 0.08, 'more than before': 0.08 }
    case 'water':
      return h.bilge > 0.3 ? { 'a lot': h.bilge, some: 0.3 } : { some: 0.2, 'a lot': 0.03 }
    case 'throttle':
      return h.lever ? { half: 0.02 } : { half: 0.93 }
    case 'spark':
      return dead > 0 && e.some((x) => x.missed > 0.9)
        ? { none: 0.85, weak: 0.1 }
        : missed > 0.08
          ? { weak: 0.7, none: 0.05 }
          : { weak: 0.04 }
    case 'cup':
      return h.jets === 'clear'
        ? { 'both short': h.ventShut ? 0.5 : 0.02, 'one short': 0.02 }
        : { [h.jets]: 0.88 }
    case 'leak':
      return e.some((x) => x.leak) ? { 'speed changes': 0.88 } : { 'speed changes': 0.03 }
    case 'lifted':
      return wet > 0.3 ? { better: 0.88 } : { better: 0.04 }
    case 'filter':
      return h.filter ? { 'wet or dirty': 0.05 } : { 'wet or dirty': 0.92 }
    case 'gap':
      return h.gap ? { wide: 0.92 } : { wide: 0.04 }
    case 'bore':
      return h.bore ? { other: 0.92 } : { other: 0.02 }
    case 'pitch':
      return h.pitch > 0
        ? { steeper: 0.9 }
        : h.pitch < 0
          ? { shallower: 0.9 }
          : { steeper: 0.03, shallower: 0.03 }
    case 'mixed':
      return h.mixed ? { otherwise: 0.03 } : { otherwise: 0.85 }
    case 'afloat':
      return h.heavy ? { 'heavy or held': 0.9 } : { 'heavy or held': 0.05 }
    case 'step':
      return h.stepped ? { 'a step': 0.88 } : { 'a step': 0.05 }
    case 'rest':
      return h.ventShut || heat > 0.95
        ? { recovered: 0.88 }
        : s.begins === 'when hot' || s.begins === 'in turns'
          ? { recovered: 0.4 }
          : { recovered: 0.05 }
    case 'climb':
      return h.gravel
        ? { 'stays behind': 0.85 }
        : h.air > 0.3
          ? { 'stays behind': 0.4 }
          : { 'stays behind': 0.05 }
    case 'spare':
      return missed > 0.1 || e.some((x) => !x.fires && x.missed > 0.9) ? { cured: 0.75 } : { cured: 0.05 }
    default:
      return {}
  }
}
