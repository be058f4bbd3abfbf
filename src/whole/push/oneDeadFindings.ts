/** What there is to say of engines that are off in the file, and of one that might die. */
import {
  asChange,
  inNewtons,
  inPercent,
  inRpm,
  inSpeed,
  inTorque,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Because, Finding, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { Balance, OneDead } from './balanceTypes.ts'
import { type OneDeadLimits, oneDeadLimits } from './oneDeadLimits.ts'

const sources = [
  'Torque balance of engine and impeller, every root',
  'Drag of a dead two-stroke: friction by G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), from memory; pumping by motored simulation',
]

export const engineName = (craft: Craft, index: number): string =>
  craft.engines[index]?.name ?? `engine ${index + 1}`

/** Indices of the engines that the file says are not running. */
export const enginesOff = (craft: Craft): number[] => craft.engines.flatMap((e, i) => (e.running ? [] : [i]))

/** Who does not turn the impeller: "the engines", or what is left of them while some are off in the file. */
function turningEngines(craft: Craft): string {
  const off = enginesOff(craft)
  if (off.length === 0) return 'the engines'
  const names = off.map((i) => engineName(craft, i)).join(' and ')
  return `with ${names} off, what is left`
}

/** "the engines cannot turn this impeller", or who is off. */
export function cannotTurn(craft: Craft): string {
  const off = enginesOff(craft)
  return off.length === craft.engines.length
    ? 'no engine is running in the file'
    : `${turningEngines(craft)} cannot turn this impeller`
}

/** Every engine that is off in the file, so that nothing else is blamed for what it takes away. */
export function offFindings(craft: Craft, b: Balance): Finding[] {
  const off = enginesOff(craft)
  if (off.length === 0) return []
  const none = off.length === craft.engines.length
  const goes = Number.isFinite(b.tiedUp.rotation)
  const each = craft.drive.arrangement === 'a jet each'
  const how = each
    ? 'its jet is dead'
    : craft.drive.clutch === 'one-way'
      ? 'it stands still behind its clutch'
      : 'it is dragged round by the rest'
  return off.map((i) => ({
    id: `push.engine-off.${i}`,
    question: 'push',
    says: whole(
      none
        ? say`${engineName(craft, i)} is off in the file: no engine runs, and nothing pushes.`
        : goes
          ? say`${engineName(craft, i)} is off in the file: all here is without it, and ${how}.`
          : say`${engineName(craft, i)} is off in the file, and what is left does not turn the impeller: ${how}.`,
    ),
    standing: goes && !none ? 'watch' : 'stop',
    harm: 'will stop the run',
    act: say`set running to yes for ${engineName(craft, i)} to see the whole craft`,
    changes: [{ path: `engines.${i}.running`, from: 'no', to: 'yes' }],
    because: [{ says: `running: no at ${engineName(craft, i)}`, link: `engines.${i}.running` }],
    sources: ['The craft file'],
  }))
}

/** One finding on what is left when an engine dies; none with fewer than two that run. */
export function oneDeadFindings(craft: Craft, b: Balance, limits: OneDeadLimits = oneDeadLimits): Finding[] {
  const d = b.oneDead
  if (!d) return []
  const adrift = d.stalls || !(d.topSpeed.value > limits.underWay.value)
  const { value, low, high } = d.pull
  const clutch = clutchOf(d, limits)
  const paddle = 'take a paddle, and stay where you can swim ashore'
  const act = adrift ? paddle : clutch[0]?.act
  const left: Finding = {
    id: 'push.one-dead',
    question: 'push',
    says: saysOf(craft, b, d, limits),
    value,
    unit: 'N',
    ...(Number.isFinite(low) && Number.isFinite(high) ? { low, high } : {}),
    standing: standingOf(craft, d, adrift, limits),
    harm: 'will stop the run',
    ...(act === undefined ? {} : { act }),
    because: reasonsOf(d),
    sources,
  }
  return [left, ...clutch]
}

/** Over the hump still: good. Under way: watch. Adrift: watch, and stop where the file's wind blows it away from the bank. */
function standingOf(craft: Craft, d: OneDead, adrift: boolean, limits: OneDeadLimits): Standing {
  if (adrift) return craft.place.wind.value >= limits.paddleWind.value ? 'stop' : 'watch'
  return d.planes && d.stallShare < limits.mayStall.value ? 'good' : 'watch'
}

/** The rest when one of two, or of more, dies: "the other one", "the others". */
const othersOf = (craft: Craft): string =>
  craft.engines.filter((e) => e.running).length === 2 ? 'the other one' : 'the others'

function saysOf(craft: Craft, b: Balance, d: OneDead, limits: OneDeadLimits): Sentence {
  const dead = engineName(craft, d.engine)
  const others = othersOf(craft)
  const one = others === 'the other one'
  if (d.stalls) {
    const load = d.place === 'dragged' ? 'the dead one and the impeller' : 'the impeller'
    return say`With ${dead} dead ${others} ${one ? 'stalls' : 'stall'}: ${load} cannot be turned above idle, ${inRpm(idleOf(craft))}.`
  }
  const share = b.pull.value > 0 ? say`, ${inPercent(d.pull.value / b.pull.value)} of now` : ''
  const may =
    d.stallShare >= limits.mayStall.value
      ? say`; in ${inPercent(d.stallShare)} of what the doubts allow ${one ? 'it stalls' : 'they stall'}`
      : ''
  const speed = d.topSpeed.value > 0 ? say`makes ${ranged(inSpeed, d.topSpeed)}` : 'makes no steady speed'
  return say`With ${dead} dead ${others} ${one ? 'pulls' : 'pull'} ${ranged(inNewtons, d.pull)}${share}, and it ${speed}${d.planes ? ', still over the hump' : ', below the hump'}${may}.`
}

/** What a one-way clutch would leave, where it leaves enough more to be worth its trouble. */
function clutchOf(d: OneDead, limits: OneDeadLimits): Finding[] {
  const free = d.withClutch
  if (!free || free.stalls || !(d.stalls || free.pull.value > limits.clutchGain.value * d.pull.value))
    return []
  const instead = d.stalls ? 'a stall' : say`${inNewtons(d.pull.value)} and ${inSpeed(d.topSpeed.value)}`
  return [
    {
      id: 'push.one-way-clutch',
      question: 'push',
      says: say`Behind a one-way clutch a dead engine would stand still: ${ranged(inNewtons, free.pull)} and ${ranged(inSpeed, free.topSpeed)} are left then, instead of ${instead}.`,
      value: free.pull.value,
      unit: 'N',
      standing: 'good',
      harm: 'will stop the run',
      act: say`fit a one-way clutch between each engine and the shaft: ${asChange(inNewtons(free.pull.value - d.pull.value))} with one engine dead, nothing while both run`,
      because: [{ says: 'no one-way clutch in the file', link: 'drive.clutch' }],
      sources,
    },
  ]
}

function reasonsOf(d: OneDead): Because[] {
  const because: Because[] = []
  if (!d.stalls)
    because.push({ says: say`engine speed left: ${ranged(inRpm, d.rotation)}`, link: 'drive.arrangement' })
  because.push({
    says: {
      dragged: 'the dead one is dragged round',
      'standing still': 'the dead one stands still behind its clutch',
      'its own jet': 'only its own jet is dead',
    }[d.place],
    link: d.place === 'its own jet' ? 'drive.arrangement' : 'drive.clutch',
  })
  if (d.drag)
    because.push({
      says: say`dragging it takes ${ranged(inTorque, d.drag, 0.01)} ${
        {
          file: 'by the file’s own pressure',
          motored: 'by simulation of the engine turned with its spark off',
          law: 'by friction and pumping of engines of this size',
        }[d.dragFrom ?? 'law']
      }`,
      link: `engines.${d.engine}.dead drag`,
    })
  if (d.band)
    because.push({ says: say`it would be heard between ${inRpm(d.band.low)} and ${inRpm(d.band.high)}` })
  return because
}

/** the highest idle of the engines that run, rev/s */
function idleOf(craft: Craft): number {
  return Math.max(0, ...craft.engines.filter((e) => e.running).map((e) => ('idle' in e ? e.idle.value : 0)))
}
