/** What hubs, shaft, whirling, twisting, thrust, mounts and a dead engine have to say. */
import {
  inHertz,
  inMm,
  inMpa,
  inNewtons,
  inPercent,
  inRpm,
  inTimes,
  inTorque,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { DriveAnswer, DriveInputs, Part } from './driveAnswer.ts'
import type { DriveLimits } from './driveLimits.ts'
import type { Hold, Turning } from './driveLinks.ts'
import { first, inHours, peaksOf, pulls, src, times } from './driveSay.ts'
import type { ShaftLine } from './shaftLine.ts'
import { shaftAllows } from './shaftStress.ts'

const question = 'strength' as const

export function lineFindings(inputs: DriveInputs, answer: DriveAnswer, limits: DriveLimits): Finding[] {
  const { parts, line } = answer
  return [
    ...parts.flatMap((p) => (p.of.kind === 'coupling' ? [] : [carriesOf(p, limits)])),
    ...crossingOf(inputs, answer, limits),
    ...(line ? [whirlOf(line, limits), thrustOf(line, limits)] : []),
    ...alignOf(inputs, answer, limits),
    ...shakesOf(answer, limits),
    ...deadOf(inputs),
  ]
}

/** A hub or a shaft against the peaks. */
function carriesOf(p: Part, limits: DriveLimits): Finding {
  const { of: it, margin } = p
  const good = margin.value >= limits.holds.value
  return {
    id: `driveline.${it.kind === 'hold' ? 'hub' : 'shaft'}.${p.index}`,
    question,
    says: good
      ? say`${first(it.name)} bears ${times(margin)} times its ${peaksOf(p)}.`
      : say`${first(it.name)} bears only ${times(margin)} times its ${peaksOf(p)}.`,
    value: margin.value,
    low: margin.low,
    high: margin.high,
    unit: '1',
    standing: good ? 'good' : 'watch',
    because: it.kind === 'hold' ? holdBecause(it) : shaftBecause(it as Turning),
    ...(good
      ? {}
      : { act: it.kind === 'hold' ? holdAct(it, margin.value) : shaftAct(it as Turning, margin.value) }),
    harm: 'will stop the run',
    sources: it.kind === 'hold' ? [src.keys, src.chain] : [src.shafts, src.chain],
  }
}

const holdBecause = (h: Hold) => [
  {
    says: say`held by ${heldBy[h.by]} over ${inMm(h.length.value)} on a shaft of ${inMm(h.diameter.value, 0.1)}`,
    link: `${h.path}.by`,
  },
  { says: `bears on ${h.made}`, link: `${h.path}.made` },
]

const heldBy: Readonly<Record<Hold['by'], string>> = {
  key: 'a key',
  spline: 'splines',
  clamp: 'a clamp',
  'set screw': 'set screws',
  pin: 'a cross pin',
  thread: 'a thread',
  welded: 'a weld',
}

/** A longer hub where length helps, else a key of metal in metal. */
function holdAct(h: Hold, margin: number) {
  const longer = (1.3 * h.length.value) / margin
  if (h.data.plastic)
    return say`an insert of aluminium in the hub for ${heldBy[h.by]} to bear on, ${inMm(h.length.value)} long or more`
  if ((h.by === 'key' || h.by === 'spline') && longer < 4 * h.diameter.value)
    return say`make the hub ${inMm(longer)} long, or the shaft thicker than ${inMm(h.diameter.value, 0.1)}`
  return say`a key and a hub ${inMm(Math.max(h.length.value, 2 * h.diameter.value))} long instead of ${heldBy[h.by]}`
}

const shaftBecause = (s: Turning) => [
  {
    says: say`${s.metalName}, which the code lets bear ${inMpa(shaftAllows(s.metal, s.keyed))} in shear${s.keyed ? ' with a keyway' : ''}`,
    link: `${s.path}.steel`,
  },
  { says: say`${inMm(s.diameter.value, 0.1)} thick`, link: `${s.path}.diameter` },
]

const shaftAct = (s: Turning, margin: number) =>
  say`a shaft ${inMm(s.diameter.value * (1.3 / margin) ** (1 / 3), 0.5)} thick`

/** Where one or two pulses a turn meet the chain's own frequency. */
function crossingOf(
  { ratio }: DriveInputs,
  { frequency, peaks, inOrder }: DriveAnswer,
  limits: DriveLimits,
): Finding[] {
  const low = frequency.value
  if (!Number.isFinite(low)) return []
  const own = ranged(inHertz, frequency)
  const stays = peaks.state.rotation
  const orders = [1, 2].map((order) => ({ order, at: low / order }))
  const near = orders.reduce((a, b) => (Math.abs(b.at / stays - 1) < Math.abs(a.at / stays - 1) ? b : a))
  const apart = Math.abs(near.at / stays - 1)
  const meets = apart < limits.crossing.value
  const rubber = inOrder.some((p) => p.of.kind === 'coupling' && p.of.rubber)
  const pulses = near.order === 1 ? 'one pulse a turn meets' : 'two pulses a turn meet'
  return [
    {
      id: 'driveline.twist',
      question,
      says: meets
        ? say`The chain swings against itself at ${own}, where ${pulses} it at ${inRpm(near.at)}, close to the ${inRpm(stays)} it runs at ${peaks.state.name}: peaks grow there.`
        : say`The chain swings against itself at ${own}: ${pulses} it at ${inRpm(near.at)}, ${inPercent(apart)} away from the ${inRpm(stays)} it runs at ${peaks.state.name}.`,
      value: near.at,
      unit: 'rev/s',
      standing: meets ? 'watch' : 'good',
      because: [
        {
          says: 'inertias that nobody gave are guessed by displacement and bore',
          link: 'engines.0.rotating inertia',
        },
        ...(ratio === 1 ? [] : [{ says: say`behind a ratio of ${inTimes(ratio)}`, link: 'drive.ratio' }]),
      ],
      ...(meets
        ? {
            act: rubber
              ? say`a shaft stiff or soft enough to bring it beyond ${inHertz(low * (1 + 2 * limits.crossing.value))} or under ${inHertz(low / (1 + 2 * limits.crossing.value))}`
              : say`a coupling with a rubber element, which brings it under ${inHertz(low / (1 + 2 * limits.crossing.value))}`,
          }
        : {}),
      harm: 'will stop the run',
      sources: [src.chain],
    },
  ]
}

function whirlOf(line: ShaftLine, limits: DriveLimits): Finding {
  const { whirl, fastest, shaft } = line
  const part = fastest / whirl.value
  const good = part <= limits.whirl.value
  // an overhung mass whirls about as the root of its length
  const shorter = shaft.overhang.value * (limits.whirl.value / part) ** 1.5
  return {
    id: 'driveline.whirl',
    question,
    says: good
      ? say`The shaft whirls at ${ranged(inRpm, whirl)}; the impeller turns at ${inRpm(fastest)}, ${inPercent(part)} of that.`
      : say`The shaft may whirl: it does so at ${ranged(inRpm, whirl)}, and the impeller turns at ${inRpm(fastest)}, ${inPercent(part)} of that.`,
    value: whirl.value,
    low: whirl.low,
    high: whirl.high,
    unit: 'rev/s',
    standing: good ? 'good' : 'watch',
    because: [
      {
        says: say`the impeller hangs ${inMm(shaft.overhang.value)} behind its last bearing`,
        link: `${shaft.path}.overhang`,
      },
      {
        says: say`${inMm(shaft.diameter.value, 0.1)} thick, ${inMm(shaft.length.value)} long`,
        link: `${shaft.path}.diameter`,
      },
    ],
    ...(good
      ? {}
      : {
          act: say`a bearing half-way along its ${inMm(shaft.length.value)}, or ${inMm(Math.max(0.01, shorter))} of overhang`,
        }),
    harm: 'will stop the run',
    sources: [src.whirl],
  }
}

function thrustOf(line: ShaftLine, limits: DriveLimits): Finding {
  const { shaft, push, life, bearingName } = line
  const common = {
    id: 'driveline.thrust',
    question,
    because: [
      { says: 'the pressure that drives the jet pulls the impeller forward', link: 'jet.nozzle.bore' },
      { says: 'what takes it', link: `${shaft.path}.thrust` },
    ],
    harm: 'will stop the run' as const,
    sources: [src.iso281],
  }
  if (shaft.thrust === 'engine')
    return {
      ...common,
      says: say`The impeller pulls its shaft forward with ${pulls(push)}, and the engine’s crankshaft takes it: its bearings and webs are not made to.`,
      value: push.value,
      low: push.low,
      high: push.high,
      unit: 'N',
      standing: 'watch',
      act: say`a bearing against a shoulder of the shaft that takes ${inNewtons(push.high)}`,
    }
  if (!life)
    return {
      ...common,
      says: say`The impeller pulls its shaft forward with ${pulls(push)}; what takes that is not known.`,
      value: push.value,
      low: push.low,
      high: push.high,
      unit: 'N',
      standing: 'unknown',
      measureNext: {
        what: 'look for a shoulder or ring on the shaft and the bearing it runs against, and read the bearing’s number',
        with: 'torch',
        minutes: 5,
        path: `${shaft.path}.thrust`,
      },
    }
  const good = life.value >= limits.life.value
  const kind = shaft.thrust === 'angular contact' ? 'an angular-contact bearing the size of a' : 'a'
  return {
    ...common,
    says: good
      ? say`The impeller pulls its shaft forward with ${pulls(push)}; ${kind} ${bearingName} takes that for ${inHours(life)} before one in ten fails, kept dry.`
      : say`The impeller pulls its shaft forward with ${pulls(push)}; ${kind} ${bearingName} takes that for ${inHours(life)} only before one in ten fails, even kept dry.`,
    value: life.value,
    low: life.low,
    high: life.high,
    unit: 's',
    standing: good ? 'good' : 'watch',
    ...(good
      ? {}
      : {
          act: say`a pair of angular-contact bearings, or one that is rated ${inTimes((limits.life.value / life.value) ** (1 / 3))} times as high`,
        }),
  }
}

/** How far rubber under the engines lets the crank's end wander, and what the couplings take of it. */
function alignOf({ chain }: DriveInputs, { mounted, inOrder }: DriveAnswer, limits: DriveLimits): Finding[] {
  if (!mounted || !chain || mounted.inputs.under === 'one frame') return []
  const belt = chain.between.some((b) => b.some((p) => p.kind === 'belt'))
  const joints = inOrder.filter((p) => p.of.kind === 'coupling')
  if (joints.length === 0 && belt) return []
  const stiff = joints.length === 0 || joints.some((p) => p.of.kind === 'coupling' && !p.of.rubber)
  const takes = stiff ? limits.stiffOff.value : limits.softOff.value
  const good = mounted.off.value <= takes
  const off = ranged((v) => inMm(v, 0.01), mounted.off)
  return [
    {
      id: 'driveline.line',
      question,
      says: good
        ? say`At full torque the rubber lets a crank’s end go ${off} off its line; the couplings take ${inMm(takes, 0.01)}.`
        : say`At full torque the rubber lets a crank’s end go ${off} off its line, and ${stiff ? 'couplings bolted face to face take' : 'the rubber in the couplings takes'} ${inMm(takes, 0.01)}: shaft and bolts are bent at every turn.`,
      value: mounted.off.value,
      low: mounted.off.low,
      high: mounted.off.high,
      unit: 'm',
      standing: good ? 'good' : 'watch',
      because: [{ says: 'each engine stands on mounts of its own', link: 'mounts.under' }],
      ...(good
        ? {}
        : {
            act: say`engines and shaft on one stiff frame, the rubber under that, lined up within ${inMm(takes, 0.01)}`,
            changes: [{ path: 'mounts.under', from: 'each engine', to: 'one frame' }],
          }),
      harm: 'will stop the run',
      sources: [src.rubber, src.practice],
    },
  ]
}

function shakesOf({ mounted }: DriveAnswer, limits: DriveLimits): Finding[] {
  if (!mounted || mounted.idle <= 0) return []
  const { atIdle, running, own } = mounted
  const good = atIdle.value <= limits.shakes.value
  return [
    {
      id: 'driveline.mounts',
      question,
      says: say`On their rubber the engines bounce at ${ranged(inHertz, own)}: at idle ${ranged((v) => inTimes(v, 0.1), atIdle)} times the shaking passes into the hull, running ${ranged((v) => inTimes(v, 0.01), running)} times.`,
      value: atIdle.value,
      low: atIdle.low,
      high: atIdle.high,
      unit: '1',
      standing: good ? 'good' : 'watch',
      because: [
        { says: 'rubber by its size and hardness', link: 'mounts.hardness' },
        { says: say`fires ${inHertz(mounted.idle)} at idle`, link: 'engines' },
      ],
      ...(good
        ? {}
        : {
            act: say`softer or taller mounts that bounce at ${inHertz(mounted.idle / 2)} or less, or a faster idle`,
          }),
      harm: 'comfort',
      sources: [src.rubber],
    },
  ]
}

/** Two on one shaft: the dead one turns without fuel and so without oil. */
function deadOf({ chain, oneWayClutch, setting }: DriveInputs): Finding[] {
  if (!chain || chain.engines.length < 2 || oneWayClutch || !setting?.dragged) return []
  const two = chain.engines.filter((e) => e.displacement > 0)
  if (two.length < 2) return []
  const drag = (1e5 * two[0]!.displacement) / (2 * Math.PI)
  return [
    {
      id: 'driveline.dead',
      question,
      says: say`If one engine dies the other drags it at ${inRpm(setting.dragged.value)} against about ${inTorque(drag)}, and what lubricates it is in the fuel it no longer gets.`,
      value: setting.dragged.value,
      unit: 'rev/s',
      standing: 'watch',
      because: [
        { says: 'no one-way clutch in the chain', link: 'drive.clutch' },
        { says: 'finding of what one engine still does', link: 'finding:push.one-dead' },
      ],
      act: say`stop both at once, or a one-way clutch behind each engine that carries ${inTorque(2.5 * setting.states[0]!.torque)}`,
      harm: 'will stop the run',
      sources: [src.practice],
    },
  ]
}
