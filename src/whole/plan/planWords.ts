/** The words of a plan: what to do in each step, where the phone stands, what to take along and to go through beforehand. */
import { inMetres, inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { Trial } from './planModel.ts'

interface StepWords {
  act: Sentence
  read: string
  cautions: readonly string[]
}

const rope = 'Stay out of the line of the rope and of the jet; somebody stands at the stop switch.'
const ashore =
  'Engine off and kill lead pulled before a hand goes near the intake, the impeller or the shaft; what ran hot stays hot for ten minutes.'
const afloat = 'Life jacket on, stop switch tied to the rider, somebody on the bank who sees the whole way.'

const nameOf = (craft: Craft, i: number) => craft.engines[i]?.name ?? `engine ${i + 1}`

/** What to do in a trial, what to read, and what to mind. */
export function stepWords(craft: Craft, trial: Trial): StepWords {
  const twenty = inSeconds(20, 1)
  const several = craft.engines.filter((e) => e.running).length > 1
  const all = several ? 'all engines' : 'the engine'
  const scale = 'the scale, three times, five seconds apart, peak hold off'
  if (trial.underWay)
    return {
      act: say`Run ${twenty} straight at full throttle, then the same way back, GPS track on.`,
      read: 'nothing by hand: the track gives the best five seconds each way',
      cautions: [afloat],
    }
  if (trial.cut)
    return {
      act: `At the end of the full-throttle pull cut ${several ? 'all engines at once' : 'the engine'} with the stop switch, throttle left open.`,
      read: 'nothing: let the recording run on for five seconds',
      cautions: [ashore],
    }
  if (trial.choked)
    return {
      act: say`Tied up at full throttle: half choke on ${all} for ${inSeconds(3, 1)}, then open again. Once.`,
      read: 'say aloud “choke on” and “choke off”',
      cautions: [rope],
    }
  if (trial.engines.length === 1 && several) {
    const name = nameOf(craft, trial.engines[0]!)
    const held = craft.drive.arrangement === 'one shaft' && craft.drive.clutch === 'none'
    return {
      act: say`Tied up, ${name} alone for ${twenty} at full throttle${held ? ', the other one switched off and dragged along' : ''}.`,
      read: scale,
      cautions: [rope],
    }
  }
  const open = trial.throttle > 0.99 ? 'full throttle' : say`${inPercent(trial.throttle)} throttle`
  return {
    act: say`Tied up, ${all} for ${twenty} at ${open}. Say the throttle aloud before, not during.`,
    read: scale,
    cautions: [rope],
  }
}

/** Where the phone stands and how. */
export function phonePlace(craft: Craft): Sentence[] {
  const length = craft.hull.length.value
  return [
    say`Phone on the bank, ${inMetres(3, 1)} to ${inMetres(10, 1)} abeam of the engines, upright, out of the wind, fingers off the microphones; plain video, no chat app.`,
    say`Two seconds of quiet before the start and after the stop.`,
    say`Rope at least ${inMetres(Math.max(6, 2.5 * length), 0.5)} and low, water at least ${inMetres(0.8, 0.1)} deep under the intake, the jet clear of bank and bottom.`,
  ]
}

/** Before casting off. */
export function checklist(craft: Craft): Sentence[] {
  const burns = craft.engines.some((e) => e.running && e.kind !== 'electric')
  return [
    'Kill lead on, and tried: it stops every engine.',
    'Coupling and impeller bolts tight and marked.',
    ...(burns
      ? [
          'Fuel: enough for the run, cap vent open, lines and filter dry outside.',
          'Extinguisher beside the post, no smoking while filling.',
        ]
      : ['Battery fastened, its switch in reach, contacts dry.']),
    'Hatch shut, bilge dry, drain plug in.',
    'Grate clear of weed.',
    'Somebody on the bank with a rope and a phone; tell where you are.',
  ]
}

/** What to take along for these steps. */
export function kit(craft: Craft, steps: readonly string[]): string[] {
  const tied = steps.some((id) => id !== 'way')
  const burns = craft.engines.some((e) => e.running && e.kind !== 'electric')
  return [
    'phone with an empty disk, in a dry bag',
    ...(tied ? ['luggage scale, two shackles, low rope, a post or tree that bears it'] : []),
    ...(steps.includes('way') ? ['GPS logger or the phone’s own track'] : []),
    'this card and a pencil',
    'life jacket, stop-switch cord, throw rope',
    ...(burns
      ? ['fuel mixed by the file, plug spanner, spare plugs, extinguisher']
      : ['charged battery, fuse, insulated spanner']),
    'hex keys and thread lock for the coupling',
    ...(burns ? ['gloves for hot pipes'] : []),
  ]
}
