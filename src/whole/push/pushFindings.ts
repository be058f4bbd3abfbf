/** What the balance has to say: the findings of the question "How will it go?". */
import {
  asChange,
  inField,
  inKw,
  inLitresPerSecond,
  inMm,
  inNewtons,
  inPercent,
  inRpm,
  inScaleKg,
  inSeconds,
  inSpeed,
  inTimes,
  ranged,
} from '../../base/answers/amounts.ts'
import type { Because, Finding, MeasureNext, Standing } from '../../base/answers/finding.ts'
import { type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import { type Craft, fieldAt } from '../../craft/index.ts'
import { airFindings } from './airFindings.ts'
import type { Balance, Change, Driver } from './balanceTypes.ts'
import { fileChanges } from './design.ts'
import { fittedFindings } from './fitted.ts'
import { type Wants, wantsOf } from './merit.ts'
import { cannotTurn, enginesOff, offFindings, oneDeadFindings } from './oneDeadFindings.ts'
import { partName } from './pushAnswer.ts'
import { type PushLimits, pushLimits } from './pushLimits.ts'

const sources = {
  strip:
    'Strip model of the rotor with lattice turning and cascade losses (Weinig 1935; Lieblein 1959; Denton 1993)',
  match: 'Torque balance of engine and impeller, every root',
  planing: 'Savitsky 1964, Hydrodynamic design of planing hulls',
  preplaning: 'Mercier and Savitsky 1973, Resistance of transom-stern craft in the pre-planing regime',
  pitches: 'Every pitch of these blades on the whole balance; right is what loses no more than 2 %',
}

/** The likeliest thing to measure: the input that widens the answers most and was not measured. */
export function measureNextFor(drivers: readonly Driver[]): MeasureNext | undefined {
  for (const d of drivers) {
    if (d.source !== 'guess' && d.source !== 'assumed') continue
    const how = fieldAt(d.path)?.measure
    if (how) return { ...how, path: d.path }
  }
  return undefined
}

function withRange(finding: Finding, r: Range, unit: string): Finding {
  if (Number.isFinite(r.value)) Object.assign(finding, { value: r.value, unit })
  if (Number.isFinite(r.low)) finding.low = r.low
  if (Number.isFinite(r.high)) finding.high = r.high
  return finding
}

/** what the likeliest thing to measure is told with */
const forwardLooking: ReadonlySet<string> = new Set(['push.pitch', 'push.pull', 'push.top'])

/** Findings from a solved balance. */
export function pushFindings(craft: Craft, b: Balance, limits: PushLimits = pushLimits): Finding[] {
  const next = measureNextFor(b.drivers)
  const findings = [
    ...offFindings(craft, b),
    verdictOf(craft, b),
    pullOf(craft, b),
    topOf(b),
    humpOf(b, limits),
    pipeOf(craft, b, limits),
    ...airFindings(craft, limits.airMatters.value),
    ...oneDeadFindings(craft, b, limits),
    ...bestChangeOf(craft, b, limits),
    ...fittedFindings(craft),
  ]
  if (next) for (const f of findings) if (forwardLooking.has(f.id)) f.measureNext = next
  for (const flag of b.flags) {
    const because: Because[] = [{ says: flag.text, ...(flag.path === undefined ? {} : { link: flag.path }) }]
    const standing: Standing = flag.code === 'past the redline' ? 'stop' : 'watch'
    findings.push({
      id: `push.${flag.code.replace(/\W+/g, '-')}`,
      question: 'push',
      says: whole(flag.text),
      standing,
      because,
      sources: [sources.planing],
    })
  }
  return findings
}

/** What to change for one change, as one would type it, and what it buys. */
function toDo(craft: Craft, c: Change): Pick<Finding, 'changes' | 'gain'> {
  const values = typeof c.to === 'number' ? { [c.path]: c.to, ...c.also } : undefined
  return {
    changes: values ? fileChanges(craft, values) : [{ path: c.path, from: String(c.from), to: String(c.to) }],
    ...gainOf(c),
  }
}

/** What it buys, as far as that is known: a number that is none is left out. */
function gainOf({ pull, topSpeed }: Change): Pick<Finding, 'gain'> {
  const known = (r: Range) => Number.isFinite(r.low) && Number.isFinite(r.value) && Number.isFinite(r.high)
  if (!known(pull)) return {}
  return { gain: { pull, ...(known(topSpeed) ? { topSpeed } : {}) } }
}

/** What the best pitch is worth: near its best an impeller's thrust is flat, so the gain may be small. */
function pitchIsWorth(b: Balance): Because[] {
  const best = b.changes.find((c) => c.id === 'pitch-best')
  if (!best || !Number.isFinite(best.pull.value)) return []
  const speed = Number.isFinite(best.topSpeed.value)
    ? say`, ${asChange(inSpeed(best.topSpeed.value))} top speed`
    : ''
  return [
    {
      says: say`that pitch is worth ${asChange(inNewtons(best.pull.value))} pull${speed}`,
      link: 'jet.rotor.pitch',
    },
  ]
}

function verdictOf(craft: Craft, b: Balance): Finding {
  const standing: Record<Balance['verdict']['code'], Standing> = {
    right: 'good',
    'too steep': 'watch',
    'too shallow': 'watch',
    unknown: 'unknown',
  }
  const turns = (says: string, r: Range, link: string): Because[] =>
    Number.isFinite(r.value) ? [{ says: say`${says}: ${ranged(inRpm, r)}`, link }] : []
  const because: Because[] = [
    // said once where it is judged there
    ...(b.verdict.judged === 'tied up' ? [] : turns('tied up', b.tiedUpRotation, 'finding:push.pull')),
    ...turns(
      b.verdict.judged,
      b.verdict.rotation,
      b.verdict.judged === 'tied up' ? 'finding:push.pull' : 'finding:push.top',
    ),
    ...(Number.isFinite(b.matching.powerPeakRotation)
      ? [{ says: say`most power at ${inRpm(b.matching.powerPeakRotation)}`, link: 'engines' }]
      : []),
    { says: say`pitch now ${inMm(b.verdict.pitchNow)}`, link: 'jet.rotor.pitch' },
    ...pitchIsWorth(b),
  ]
  const best = b.changes.find((c) => c.id === 'pitch-best')
  const wrong = b.verdict.code === 'too steep' || b.verdict.code === 'too shallow'
  const offered = wrong && best && !lowersBoth(best)
  return withRange(
    {
      id: 'push.pitch',
      question: 'push',
      says: b.verdict.says,
      standing: standing[b.verdict.code],
      because,
      ...(offered
        ? { act: say`print the impeller with ${inMm(Number(best.to))} of pitch`, ...toDo(craft, best) }
        : {}),
      sources: [sources.pitches, sources.strip, sources.match],
    },
    b.verdict.bestPitch,
    'm',
  )
}

/** flags of a point that is no steady state */
const unsettled: ReadonlySet<string> = new Set(['not settled', 'not converged'])

function pullOf(craft: Craft, b: Balance): Finding {
  const t = b.tiedUp
  const known = Number.isFinite(t.rotation) && Number.isFinite(b.pull.value)
  return withRange(
    {
      id: 'push.pull',
      question: 'push',
      says: known
        ? say`Tied to a post it pulls ${ranged(inNewtons, b.pull)}, ${inScaleKg(b.pull.value)} on a luggage scale, at ${inRpm(b.tiedUpRotation.value)}.`
        : `No steady pull: ${cannotTurn(craft)}.`,
      // stall, vapour and choking are judged with the jet; here only whether there is a steady state at all
      standing: !known ? 'stop' : t.flags.some(({ code }) => unsettled.has(code)) ? 'watch' : 'good',
      because: !known
        ? [{ says: 'engines, shaft and jet together', link: 'engines' }]
        : [
            { says: say`shaft power ${inKw(t.power)}`, link: 'engines' },
            {
              says: say`flow ${inLitresPerSecond(t.flow)}, pump efficiency ${inPercent(t.pumpEfficiency)}`,
              link: 'jet',
            },
            ...t.flags.map((f) => ({ says: f.text })),
          ],
      sources: [sources.strip, sources.match],
    },
    b.pull,
    'N',
  )
}

function topOf(b: Balance): Finding {
  const known = Number.isFinite(b.topSpeed.value)
  const planes = known && !b.run.stuck
  const plane =
    b.run.timeToPlane === undefined ? '' : say`, on the plane after ${inSeconds(b.run.timeToPlane)}`
  return withRange(
    {
      id: 'push.top',
      question: 'push',
      says: known ? say`It runs ${ranged(inSpeed, b.topSpeed)}${plane}.` : b.limitedBy.says,
      standing: !known ? 'unknown' : planes ? 'good' : 'watch',
      because: known ? [{ says: b.limitedBy.says, link: 'jet' }] : [],
      sources: [sources.planing, sources.preplaning, sources.match],
    },
    b.topSpeed,
    'm/s',
  )
}

function humpOf(b: Balance, limits: PushLimits): Finding {
  const { speed, drag, thrust, margin } = b.hump
  if (!(thrust > 0)) return unknownHump(b)
  if (!Number.isFinite(drag)) return noDrag(b)
  const wanted = limits.hump.value
  const enough = margin >= wanted
  const stuck = b.run.stuck
  const says = stuck
    ? say`It does not get over the hump: at ${inSpeed(b.run.stuckAt ?? speed)} it lacks ${inNewtons(b.run.deficit ?? drag - thrust)} of thrust.`
    : say`Over the hump at ${inSpeed(speed)} the thrust is ${inNewtons(thrust)} against ${inNewtons(drag)} of drag, ${inTimes(margin)} times${enough ? '' : say`; ${inTimes(wanted)} times is wanted`}.`
  return {
    id: 'push.hump',
    question: 'push',
    says,
    value: margin,
    unit: '1',
    standing: stuck ? 'stop' : enough ? 'good' : 'watch',
    because: [
      { says: say`thrust ${inNewtons(thrust)} at ${inSpeed(speed)}`, link: 'jet' },
      { says: say`drag ${inNewtons(drag)} with the rider at the best place`, link: 'rider.position' },
    ],
    sources: [sources.preplaning, sources.planing, 'Margin of 1.25 at the hump: common practice, no source'],
  }
}

function unknownHump(b: Balance): Finding {
  return {
    id: 'push.hump',
    question: 'push',
    says: 'There is no thrust to get over the hump with.',
    standing: 'stop',
    because: [{ says: b.limitedBy.says, link: 'jet' }],
    sources: [sources.match],
  }
}

function noDrag(b: Balance): Finding {
  return {
    id: 'push.hump',
    question: 'push',
    says: 'Whether it gets over the hump is not known: the drag model has no number for this hull and load.',
    standing: 'unknown',
    because: [{ says: b.limitedBy.says, link: 'hull' }],
    sources: [sources.preplaning, sources.planing],
  }
}

function pipeOf(craft: Craft, b: Balance, limits: PushLimits): Finding {
  const { bogRatio, bogRotation, held } = b.matching
  const comesOnPipe = !(bogRatio > limits.hang.value) || !Number.isFinite(bogRatio)
  const settled = b.tiedUp.rotation
  const runs = Number.isFinite(settled)
  const above = b.tiedUpRoots.filter((r) => r.stable && r.rotation > settled).at(-1)
  const share = inPercent(bogRatio)
  const says = !runs
    ? whole(cannotTurn(craft))
    : held
      ? say`The engines bog at ${inRpm(settled)}: above it the impeller takes up to ${share} of their torque${above ? say`, though past that they would hold ${inRpm(above.rotation)}` : ''}. A lighter load while they come up, or less pitch, carries them over.`
      : !comesOnPipe
        ? say`The engines may hang at ${inRpm(bogRotation)}: there the impeller takes ${share} of their torque, and above ${inPercent(limits.hang.value)} they hardly climb.`
        : Number.isFinite(bogRatio)
          ? say`The engines pull up to ${inRpm(settled)}: on the way the impeller takes ${share} of their torque at most, at ${inRpm(bogRotation)}.`
          : say`The engines pull straight up to ${inRpm(settled)}, without a valley on the way.`
  return {
    id: 'push.pipe',
    question: 'push',
    says,
    ...(Number.isFinite(bogRatio) ? { value: bogRatio, unit: '1' } : {}),
    standing: !runs || held ? 'stop' : comesOnPipe ? 'good' : 'watch',
    because: [
      {
        says: held
          ? `${b.tiedUpRoots.filter((r) => r.stable).length} steady speeds tied up; from idle it stays at the lowest`
          : 'from idle one steady speed is reached, tied up',
        link: 'jet.rotor.pitch',
      },
      { says: say`pitch ${inMm(b.verdict.pitchNow)}`, link: 'jet.rotor.pitch' },
    ],
    sources: [sources.match],
  }
}

/** What one change is worth, as a share of now: pull and speed alike, pull alone where the hump is short of thrust. */
export function worthOf(b: Balance, c: Pick<Change, 'pull' | 'topSpeed'>, wants: Wants): number {
  const part = (r: Range, now: number) =>
    Number.isFinite(r.value) && now > 0 ? Math.log1p(Math.max(-0.99, r.value / now)) : 0
  const pull = part(c.pull, b.pull.value)
  const speed = part(c.topSpeed, b.topSpeed.value)
  const short = b.run.stuck || b.hump.margin < pushLimits.hump.value
  if (short || wants === 'pull' || wants === 'plane') return pull
  return wants === 'speed' ? speed : (pull + speed) / 2
}

/** It would cost pull and speed both. */
export const lowersBoth = (c: Pick<Change, 'pull' | 'topSpeed'>): boolean =>
  c.pull.value < 0 && (c.topSpeed.value < 0 || !Number.isFinite(c.topSpeed.value))

/** The single change that buys most of what the builder wants. */
function bestChangeOf(craft: Craft, b: Balance, limits: PushLimits): Finding[] {
  // what suits while an engine is off does not suit the craft: nobody cuts a blade off for a dead engine
  if (enginesOff(craft).length > 0) return []
  const wants = wantsOf(craft)
  const worth = (c: Change) => worthOf(b, c, wants)
  const best = b.changes.filter((c) => !lowersBoth(c)).sort((x, y) => worth(y) - worth(x))[0]
  if (!best || !(worth(best) > limits.worthOffering.value)) return []
  const known = Number.isFinite(best.topSpeed.value)
  return [
    withRange(
      {
        id: 'push.change',
        question: 'push',
        says: say`The one change that buys most: ${best.says}.`,
        standing: 'good',
        ...toDo(craft, best),
        because: [
          {
            says: say`${partName(craft, best.path)}: ${shown(best.from, best.path)} now, ${shown(best.to, best.path)} then`,
            link: best.path,
          },
          {
            says: say`${known ? say`${asChange(inSpeed(best.topSpeed.value))} top speed, ` : ''}${asChange(inNewtons(best.pull.value))} pull, ${asChange(inRpm(best.rotation.value))}`,
            link: 'finding:push.pull',
          },
        ],
        sources: [sources.strip, sources.match],
      },
      known ? best.topSpeed : best.pull,
      known ? 'm/s' : 'N',
    ),
  ]
}

/** a value of the craft file in its field's own unit */
function shown(x: number | string, path: string): Sentence {
  if (typeof x !== 'number') return x
  const field = fieldAt(path)
  return field?.type === 'quantity'
    ? say`${inField(x, field.kind, field.unit)}`
    : String(Number(x.toPrecision(4)))
}
