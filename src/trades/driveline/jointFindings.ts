/** What the bolted joints of the chain have to say: whether they slip, today and later, what thread-locker does, whether a thread strips. */
import { inCelsius, inMpa, inNewtons, inTimes, inTorque, ranged } from '../../base/answers/amounts.ts'
import type { Because, Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { boltFriction, mostPreload, mostTorque, preloadOf, usualTorque } from './boltTorque.ts'
import type { Part } from './driveAnswer.ts'
import type { DriveLimits } from './driveLimits.ts'
import type { Joint } from './driveLinks.ts'
import { boltsOf, first, lockingWord, peaksOf, pulls, slipsWhen, src, times } from './driveSay.ts'
import { type Fix, fixOf } from './jointFixes.ts'
import { pressureStood, type Stage, stages } from './jointRelax.ts'
import { type Lasting, stripPull } from './partMargins.ts'
import { crackedByLocker } from './partMaterials.ts'

const question = 'strength' as const

type JointPart = Part & { of: Joint; lasts: Lasting }
const isJoint = (p: Part): p is JointPart => p.of.kind === 'coupling' && p.lasts !== undefined

export function jointFindings(parts: readonly Part[], limits: DriveLimits): Finding[] {
  return parts
    .filter(isJoint)
    .flatMap((p) => [
      slipOf(p, limits),
      ...lockerOf(p),
      ...stripOf(p, limits),
      ...stretchOf(p, limits),
      ...heatOf(p, limits),
    ])
}

/** the first moment at which its middle margin is under the limit */
const failsAt = (l: Lasting, limits: DriveLimits): Stage | undefined =>
  stages.find((s) => l.margin[s].value < limits.slips.value)

function slipOf(p: JointPart, limits: DriveLimits): Finding {
  const { of: j, lasts } = p
  const { margin } = lasts
  const fails = failsAt(lasts, limits)
  const sure = margin.minutes.high < limits.slips.value
  const keeps = margin.season.value >= limits.keeps.value && margin.season.low >= limits.slips.value
  const standing = sure ? 'stop' : keeps ? 'good' : 'watch'
  const fix = standing === 'good' ? undefined : fixOf(j, p.peaks, p.index, limits)
  return {
    id: `driveline.joint.${p.index}`,
    question,
    says: slipSays(p, fails),
    value: margin.minutes.value,
    low: margin.minutes.low,
    high: margin.minutes.high,
    unit: '1',
    standing,
    because: slipBecause(p, fix),
    ...(fix ? { act: actOf(j, fix), changes: fix.changes } : {}),
    harm: standing === 'stop' ? 'before the water' : 'will stop the run',
    ...(j.torque === undefined
      ? {
          measureNext: {
            what: 'slacken each bolt and tighten it again with a torque wrench, and write the torque down',
            with: 'torque wrench',
            minutes: 10,
            path: `${j.path}.torque`,
          },
        }
      : {}),
    sources: [src.vdi, src.creep, src.junker, src.chain],
  }
}

function slipSays(p: JointPart, fails: Stage | undefined): Sentence {
  const { margin, pull } = p.lasts
  const head = `${first(p.of.name)}, ${boltsOf(p.of)},`
  if (fails === undefined)
    return say`${head} holds ${times(margin.minutes)} times its peaks of ${inTorque(p.peak.value)} now and ${times(margin.season)} times after a season.`
  const later = fails === 'season' ? '' : say`, after a season ${times(margin.season)} times`
  return say`${head} ${slipsWhen[fails]}: each bolt then still pulls ${pulls(pull[fails])}, and together they hold ${times(margin[fails])} times its peaks of ${inTorque(p.peak.value)}${later}.`
}

function slipBecause(p: JointPart, fix: Fix | undefined): Because[] {
  const { of: j, lasts } = p
  const how = j.torque
    ? say`tightened with ${inTorque(j.torque.value)}`
    : j.tight === 'by hand'
      ? 'tightened by hand with a plain key'
      : 'how tight nobody knows'
  const because: Because[] = [
    { says: say`${how}, a bolt pulls ${pulls(lasts.pull.tightened)}`, link: `${j.path}.torque` },
    { says: say`it carries ${peaksOf(p)}`, link: 'engines' },
  ]
  if (j.data.plastic && !j.sleeves)
    because.push(
      {
        says: say`${j.made} under a head stands ${inMpa(pressureStood(j.data, 1 / 6, j.warm.value))} for minutes and ${inMpa(pressureStood(j.data, 100, j.warm.value))} for a season at ${inCelsius(j.warm.value)}, whatever the torque`,
        link: `${j.path}.made`,
      },
      {
        says: 'once it slides at each firing, every slide unwinds the thread a little; more torque sinks the heads deeper and cures nothing',
        link: `${j.path}.locking`,
      },
    )
  if (j.locking === 'spring washer')
    because.push({
      says: 'a split spring washer is flat long before the bolt is tight and holds nothing back',
      link: `${j.path}.locking`,
    })
  if (fix)
    because.push({
      says: say`built as advised it holds ${times(fix.lasts.margin.minutes)} times its peaks now and ${times(fix.lasts.margin.season)} times after a season`,
    })
  return because
}

/** In order: sleeves, bolts, locking, washers, tightening again. */
function actOf(j: Joint, fix: Fix): Sentence {
  const to = fix.joint
  const parts: Sentence[] = []
  if (to.sleeves && !j.sleeves)
    parts.push('metal sleeves through the plastic, as long as it is thick, that take the clamp')
  if (to.bolt.size !== j.bolt.size || to.number !== j.number || to.className !== j.className)
    parts.push(`${to.number} ${to.bolt.size} of ${to.className}`)
  if (to.locking !== j.locking || to.into !== j.into)
    parts.push(to.locking === 'nut' ? 'nuts with a nylon ring' : lockingWord[to.locking])
  const torque = to.torque?.value ?? 0
  parts.push(say`tightened to ${inTorque(torque)}, and again after the first warm run`)
  return joined(parts)
}

/** What a builder who trusts thread-locker should know of it here. */
function lockerOf(p: JointPart): Finding[] {
  const { of: j } = p
  if (j.locking !== 'locker' || !j.data.plastic) return []
  const cracks = j.data.locker === 'cracks it'
  const { locker } = j.data
  const { pull } = p.lasts
  return [
    {
      id: `driveline.locker.${p.index}`,
      question,
      says: cracks
        ? say`Thread-locker on ${j.name} cracks ${j.made}: it stays wet on plastic, creeps in where a bolt presses and splits it within days.`
        : say`Thread-locker does not help ${j.name}: it ${locker} on plastic, and where it sets it only keeps a thread from turning, while the pull of each bolt sinks from ${inNewtons(pull.tightened.value, 10)} to ${inNewtons(pull.minutes.value, 10)} within minutes as ${j.made} yields under its head.`,
      standing: 'watch',
      because: [
        {
          says: 'thread-locker hardens only between metals and without air',
          link: `${j.path}.locking`,
        },
        {
          says: `it cracks ${crackedByLocker.join(', ')}; nylon, POM and HDPE it leaves whole, but stays wet on`,
          link: `${j.path}.made`,
        },
        { says: 'what lets go here is the plastic under the heads, not the thread' },
      ],
      act: say`wash it off and use nuts with a nylon ring, their threads out by ${inTimes(1.5, 0.1)} turns or more`,
      harm: 'will stop the run',
      sources: [src.locker],
    },
  ]
}

function stripOf(p: JointPart, limits: DriveLimits): Finding[] {
  const { of: j, lasts } = p
  if (j.into === 'nut') return []
  const strips = stripPull(j)
  const most = Math.min(
    j.torque ? lasts.pull.tightened.high : 1.6 * lasts.pull.tightened.value,
    mostPreload(j.bolt, j.strength, boltFriction.low, 1),
  )
  const margin = strips / most
  const into = { metal: 'tapped metal', insert: 'inserts', plastic: `threads in ${j.made}`, nut: 'nuts' }[
    j.into
  ]
  const good = margin >= limits.strips.value
  return [
    {
      id: `driveline.strip.${p.index}`,
      question,
      says: good
        ? say`The bolts of ${j.name} stay in their ${into}: those strip at ${inNewtons(strips)}, ${inTimes(margin)} times what a bolt pulls.`
        : say`The bolts of ${j.name} may strip their ${into}: those give way at ${inNewtons(strips)}, and a bolt may pull ${inNewtons(most)}.`,
      value: margin,
      unit: '1',
      standing: good ? 'good' : 'watch',
      because: [{ says: 'length of thread that holds', link: `${j.path}.engagement` }],
      ...(good
        ? {}
        : {
            act: say`bolts right through with nuts, that pull ${inNewtons(usualPull(j))} each at ${inTorque(usualTorque(j.bolt, j.strength))}`,
          }),
      sources: [src.strip],
    },
  ]
}

const usualPull = (j: Joint): number => preloadOf(j.bolt, usualTorque(j.bolt, j.strength), boltFriction.value)

/** Bolts stretched for good by the torque that is written. */
function stretchOf(p: JointPart, limits: DriveLimits): Finding[] {
  const { of: j } = p
  if (!j.torque) return []
  const usual = usualTorque(j.bolt, j.strength)
  const allowed = mostTorque(j.bolt, j.strength, limits.stretches.value)
  if (j.torque.value <= allowed) return []
  return [
    {
      id: `driveline.stretch.${p.index}`,
      question,
      says: say`${inTorque(j.torque.value)} stretches the ${j.bolt.size} of ${j.name} for good where their threads are slippery.`,
      standing: 'watch',
      because: [{ says: `bolts of ${j.className}`, link: `${j.path}.class` }],
      act: say`tighten them to ${inTorque(usual)}`,
      changes: [
        { path: `${j.path}.torque`, from: `${j.torque.value} N·m`, to: `${Math.floor(2 * usual) / 2} N·m` },
      ],
      harm: 'will stop the run',
      sources: [src.vdi, src.iso898],
    },
  ]
}

/** Printed parts that get warmer than they stand. */
function heatOf(p: JointPart, limits: DriveLimits): Finding[] {
  const { of: j } = p
  if (!j.data.plastic) return []
  const room = j.data.service - j.warm.value
  const good = room >= limits.cool.value
  const warm = ranged(inCelsius, j.warm)
  return [
    {
      id: `driveline.heat.${p.index}`,
      question,
      says: good
        ? say`${first(j.name)} in ${j.made} gets ${warm}; it works up to ${inCelsius(j.data.service)}.`
        : say`${first(j.name)} in ${j.made} gets ${warm} and goes soft beyond ${inCelsius(j.data.service)}.`,
      value: room,
      unit: 'K',
      standing: good ? 'good' : 'watch',
      because: [{ says: 'how warm it gets', link: `${j.path}.temperature` }],
      ...(good
        ? {}
        : { act: say`print it in nylon, which works up to ${inCelsius(363.15)}, or make it of aluminium` }),
      harm: 'will stop the run',
      sources: [src.creep],
    },
  ]
}
