/** What the balance has to say: the findings of the question "How will it go?". */
import type { Because, Finding, MeasureNext, Standing } from '../../base/answers/finding.ts'
import type { Range } from '../../base/answers/solved.ts'
import { formatQuantity } from '../../base/units/format.ts'
import { type Craft, fieldAt } from '../../craft/index.ts'
import type { Balance, Change, Driver } from './balanceTypes.ts'
import { humpWanted, type Wants, wantsOf } from './merit.ts'
import { partName } from './pushAnswer.ts'

const rpm = (n: number) => `${Math.round((n * 60) / 10) * 10} rpm`
const N = (f: number) => `${Math.round(f)} N`
const kgf = (f: number) => `${Math.round(f / 9.80665)} kg`
const signed = (x: number, show: (x: number) => string) => `${x >= 0 ? '+' : '−'}${show(Math.abs(x))}`
const ms = (v: number) => `${v.toFixed(1)} m/s`
const kmh = (v: number) => `${Math.round(v * 3.6)} km/h`
const mm = (x: number) => `${Math.round(x * 1000)} mm`
const between = (r: Range, show: (x: number) => string) =>
  Number.isFinite(r.low) && Number.isFinite(r.high) ? ` (${show(r.low)} to ${show(r.high)})` : ''

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

/** Findings from a solved balance. Texts are metric; faces may show value, low and high in other units. */
export function pushFindings(craft: Craft, b: Balance): Finding[] {
  const next = measureNextFor(b.drivers)
  const findings = [
    verdictOf(b),
    pullOf(b),
    topOf(b),
    humpOf(b),
    pipeOf(b),
    ...deadOf(craft, b),
    ...bestChangeOf(craft, b),
  ]
  if (next) for (const f of findings.slice(0, 3)) f.measureNext = next
  for (const flag of b.flags) {
    const because: Because[] = [{ says: flag.text, ...(flag.path === undefined ? {} : { link: flag.path }) }]
    const standing: Standing = flag.code === 'past the redline' ? 'stop' : 'watch'
    findings.push({
      id: `push.${flag.code.replace(/\W+/g, '-')}`,
      question: 'push',
      says: sentence(flag.text),
      standing,
      because,
      sources: [sources.planing],
    })
  }
  return findings
}

const sentence = (text: string) =>
  `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`

/** What the best pitch is worth: near its best an impeller's thrust is flat, so the gain may be small. */
function pitchIsWorth(b: Balance): Because[] {
  const best = b.changes.find((c) => c.id === 'pitch-best')
  if (!best || !Number.isFinite(best.pull.value)) return []
  const speed = Number.isFinite(best.topSpeed.value) ? `, ${signed(best.topSpeed.value, ms)} top speed` : ''
  return [{ says: `that pitch is worth ${signed(best.pull.value, N)} pull${speed}`, link: 'result:changes' }]
}

function verdictOf(b: Balance): Finding {
  const standing: Record<Balance['verdict']['code'], Standing> = {
    right: 'good',
    'too steep': 'watch',
    'too shallow': 'watch',
    unknown: 'unknown',
  }
  const because: Because[] = [
    {
      says: `tied up: ${rpm(b.tiedUpRotation.value)}${between(b.tiedUpRotation, rpm)}`,
      link: 'result:tied up',
    },
    {
      says: `${b.verdict.judged}: ${rpm(b.verdict.rotation.value)}${between(b.verdict.rotation, rpm)}`,
      link: 'result:design',
    },
    { says: `most power at ${rpm(b.matching.powerPeakRotation)}`, link: 'engines' },
    { says: `pitch now ${mm(b.verdict.pitchNow)}`, link: 'jet.rotor.pitch' },
    ...pitchIsWorth(b),
  ]
  return withRange(
    {
      id: 'push.pitch',
      question: 'push',
      says: b.verdict.says,
      standing: standing[b.verdict.code],
      because,
      sources: [sources.pitches, sources.strip, sources.match],
    },
    b.verdict.bestPitch,
    'm',
  )
}

function pullOf(b: Balance): Finding {
  const t = b.tiedUp
  const known = Number.isFinite(t.rotation) && Number.isFinite(b.pull.value)
  return withRange(
    {
      id: 'push.pull',
      question: 'push',
      says: known
        ? `Tied to a post it pulls ${N(b.pull.value)}${between(b.pull, N)}, ${kgf(b.pull.value)} on a luggage scale, at ${rpm(b.tiedUpRotation.value)}.`
        : 'No steady pull: the engines cannot turn this impeller.',
      standing: known ? (t.flags.length > 0 ? 'watch' : 'good') : 'stop',
      because: !known
        ? [{ says: 'no steady speed of the engines with this impeller', link: 'engines' }]
        : [
            { says: `shaft power ${(t.power / 1000).toFixed(1)} kW`, link: 'engines' },
            {
              says: `flow ${(t.flow * 1000).toFixed(0)} L/s, pump efficiency ${Math.round(t.pumpEfficiency * 100)} %`,
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
    b.run.timeToPlane === undefined ? '' : `, on the plane after ${b.run.timeToPlane.toFixed(1)} s`
  return withRange(
    {
      id: 'push.top',
      question: 'push',
      says: known
        ? `It runs ${ms(b.topSpeed.value)}, ${kmh(b.topSpeed.value)}${between(b.topSpeed, ms)}${plane}.`
        : b.limitedBy.says,
      standing: !known ? 'unknown' : planes ? 'good' : 'watch',
      because: [{ says: b.limitedBy.says, link: 'result:limit' }],
      sources: [sources.planing, sources.preplaning, sources.match],
    },
    b.topSpeed,
    'm/s',
  )
}

function humpOf(b: Balance): Finding {
  const { speed, drag, thrust, margin } = b.hump
  if (!(thrust > 0)) return unknownHump(b)
  if (!Number.isFinite(drag)) return noDrag(b)
  const enough = margin >= humpWanted
  const stuck = b.run.stuck
  const says = stuck
    ? `It does not get over the hump: at ${ms(b.run.stuckAt ?? speed)} it lacks ${N(b.run.deficit ?? drag - thrust)} of thrust.`
    : `Over the hump at ${ms(speed)} the thrust is ${N(thrust)} against ${N(drag)} of drag, ${margin.toFixed(2)} times${enough ? '' : '; 1.25 times is wanted'}.`
  return {
    id: 'push.hump',
    question: 'push',
    says,
    value: margin,
    unit: '1',
    standing: stuck ? 'stop' : enough ? 'good' : 'watch',
    because: [
      { says: `thrust ${N(thrust)} at ${ms(speed)}`, link: 'jet' },
      { says: `drag ${N(drag)} with the rider at the best place`, link: 'rider.position' },
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
    because: [{ says: b.limitedBy.says, link: 'result:limit' }],
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

function pipeOf(b: Balance): Finding {
  const { bogRatio, bogRotation, comesOnPipe, held } = b.matching
  const settled = b.tiedUp.rotation
  const runs = Number.isFinite(settled)
  const above = b.tiedUpRoots.filter((r) => r.stable && r.rotation > settled).at(-1)
  const share = `${Math.round(bogRatio * 100)} %`
  const says = !runs
    ? 'The engines do not pull up: no steady speed with this impeller.'
    : held
      ? `The engines bog at ${rpm(settled)}: above it the impeller takes up to ${share} of their torque${above ? `, though past that they would hold ${rpm(above.rotation)}` : ''}. A lighter load while they come up, or less pitch, carries them over.`
      : !comesOnPipe
        ? `The engines may hang at ${rpm(bogRotation)}: there the impeller takes ${share} of their torque, and above 95 % they hardly climb.`
        : Number.isFinite(bogRatio)
          ? `The engines pull up to ${rpm(settled)}: on the way the impeller takes ${share} of their torque at most, at ${rpm(bogRotation)}.`
          : `The engines pull straight up to ${rpm(settled)}, without a valley on the way.`
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
        link: 'result:roots',
      },
      { says: `pitch ${mm(b.verdict.pitchNow)}`, link: 'jet.rotor.pitch' },
    ],
    sources: [sources.match],
  }
}

function deadOf(craft: Craft, b: Balance): Finding[] {
  const d = b.oneDead
  if (!d) return []
  const share = d.pull / b.pull.value
  const free = d.withClutch
  const fitted = craft.drive.clutch === 'one-way'
  const lift = free.pull / d.pull
  const advice =
    !fitted && lift > 1.1
      ? ` A one-way clutch on each engine would leave ${N(free.pull)} and ${ms(free.topSpeed)}.`
      : ''
  return [
    {
      id: 'push.one-dead',
      question: 'push',
      says: `With one engine dead it pulls ${N(d.pull)}, ${Math.round(share * 100)} % of now, and makes ${Number.isFinite(d.topSpeed) ? ms(d.topSpeed) : 'no steady speed'}.${advice}`,
      value: d.pull,
      unit: 'N',
      standing: Number.isFinite(d.topSpeed) && d.topSpeed > 1 ? 'good' : 'watch',
      because: [
        { says: `the living engine turns ${rpm(d.rotation)}`, link: 'result:one dead' },
        {
          says: fitted ? 'the dead one stands still behind its clutch' : 'the dead one is dragged round',
          link: 'drive.clutch',
        },
      ],
      sources: [
        sources.match,
        'Drag of a dead two-stroke 1–2 bar mean pressure: from memory of motored tests',
      ],
    },
  ]
}

/** What one change is worth, as a share of now: pull and speed alike, pull alone where the hump is short of thrust. */
export function worthOf(b: Balance, c: Pick<Change, 'pull' | 'topSpeed'>, wants: Wants): number {
  const part = (r: Range, now: number) =>
    Number.isFinite(r.value) && now > 0 ? Math.log1p(Math.max(-0.99, r.value / now)) : 0
  const pull = part(c.pull, b.pull.value)
  const speed = part(c.topSpeed, b.topSpeed.value)
  const short = b.run.stuck || b.hump.margin < humpWanted
  if (short || wants === 'pull' || wants === 'plane') return pull
  return wants === 'speed' ? speed : (pull + speed) / 2
}

/** It would cost pull and speed both. */
export const lowersBoth = (c: Pick<Change, 'pull' | 'topSpeed'>): boolean =>
  c.pull.value < 0 && (c.topSpeed.value < 0 || !Number.isFinite(c.topSpeed.value))

/** worth from which a change is offered, a share of now */
const worthOffering = 0.01

/** The single change that buys most of what the builder wants. */
function bestChangeOf(craft: Craft, b: Balance): Finding[] {
  const wants = wantsOf(craft)
  const worth = (c: Change) => worthOf(b, c, wants)
  const best = b.changes.filter((c) => !lowersBoth(c)).sort((x, y) => worth(y) - worth(x))[0]
  if (!best || !(worth(best) > worthOffering)) return []
  const known = Number.isFinite(best.topSpeed.value)
  const speed = known ? `${signed(best.topSpeed.value, ms)} top speed, ` : ''
  return [
    withRange(
      {
        id: 'push.change',
        question: 'push',
        says: `The one change that buys most: ${best.says}; ${speed}${signed(best.pull.value, N)} pull, ${signed(best.rotation.value, rpm)}.`,
        standing: 'good',
        because: [
          {
            says: `${partName(craft, best.path)}: ${shown(best.from, best.path)} now, ${shown(best.to, best.path)} then`,
            link: best.path,
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
function shown(x: number | string, path: string): string {
  if (typeof x !== 'number') return x
  const field = fieldAt(path)
  return field?.type === 'quantity'
    ? formatQuantity(x, field.kind, field.unit)
    : String(Number(x.toPrecision(4)))
}
