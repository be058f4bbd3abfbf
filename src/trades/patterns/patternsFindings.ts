/** What patterns have to say: ways that miss their holes or run too near, parts that cannot be made. */
import { inDegrees, inMetres, inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { jointsOf, type RouteLeg } from '../../shapes/route.ts'
import type { RouteChange } from '../../shapes/routeClose.ts'
import type { PatternsAnswer, PipeWay } from './patternsAnswer.ts'
import type { PatternsInputs } from './patternsFromCraft.ts'
import type { PatternsLimits } from './patternsLimits.ts'

const finding = (id: string, f: Omit<Finding, 'id' | 'question' | 'sources'>): Finding => ({
  id: `patterns.${id}`,
  question: 'make',
  sources: ['exact geometry'],
  ...f,
})

/** "turn the bend of the header 12° clockwise" */
function changeSays(legs: readonly RouteLeg[], { leg, what, by }: RouteChange): Sentence {
  const { name } = legs[leg]!
  if (what === 'clock')
    return say`turn the bend of ${name} ${inDegrees(Math.abs(by))} ${by > 0 ? 'clockwise' : 'anticlockwise'}, seen along the pipe`
  if (what === 'bend') return say`bend ${name} ${inDegrees(Math.abs(by))} ${by > 0 ? 'more' : 'less'}`
  return say`make ${name} ${inMm(Math.abs(by), 0.1)} ${by > 0 ? 'longer' : 'shorter'}`
}

/** Changes that are too small to be made are left out. */
const worthSaying = ({ what, by }: RouteChange): boolean => Math.abs(by) > (what === 'length' ? 5e-5 : 5e-4)

function endFinding({ pipe, miss, closing }: PipeWay, limits: PatternsLimits): Finding[] {
  if (miss === undefined) return []
  const id = `end.${pipe.engine + 1}`
  const because = [
    { says: 'flange and hole as the file has them', link: `${pipe.at}.route` },
    { says: 'lengths, bends and clocks of its parts', link: `${pipe.at}.pipe` },
  ]
  if (miss <= limits.meets.value)
    return [
      finding(id, {
        says: say`The pipe of ${pipe.name} ends ${inMm(miss, 0.1)} from the middle of its hole.`,
        value: miss,
        unit: 'm',
        standing: 'good',
        because,
      }),
    ]
  const act = closing?.converged
    ? joined(closing.value.changes.filter(worthSaying).map((c) => changeSays(pipe.parts, c)))
    : say`move the hole or the flange by ${inMm(miss)}, or give the pipe another bend: no three changes of its parts close it`
  return [
    finding(id, {
      says: say`The pipe of ${pipe.name} misses its hole by ${inMm(miss, 0.1)}.`,
      value: miss,
      unit: 'm',
      standing: 'watch',
      because,
      act,
      harm: 'will stop the run',
    }),
  ]
}

function gapFindings({ pipe, nearest }: PipeWay, limits: PatternsLimits): Finding[] {
  return nearest.map((n) => {
    const least = (n.what === 'pipe' ? limits.pipes : limits.foam).value
    const what = n.what === 'pipe' ? say`the pipe of ${n.to}` : say`${n.to}`
    const part = pipe.parts[n.leg]!
    const where = say`${part.name}, ${inMetres(n.along)} from the flange`
    const close = n.gap < least
    const through = n.gap <= 0
    return finding(`gap.${n.what}.${pipe.engine + 1}`, {
      says: through
        ? say`The pipe of ${pipe.name} runs ${inMm(-n.gap)} into ${what}, at ${where}.`
        : say`The pipe of ${pipe.name} keeps ${inMm(n.gap)} from ${what}, nearest at ${where}.`,
      value: n.gap,
      unit: 'm',
      standing: through ? 'stop' : close ? 'watch' : 'good',
      because: [
        { says: say`wanted: ${inMm(least)}`, link: part.path },
        { says: what, link: n.path },
      ],
      ...(close
        ? {
            act: say`keep ${part.name} ${inMm(least - n.gap)} farther from ${what}, or take that much of it away`,
            harm:
              through || n.what !== 'pipe' ? ('before the water' as const) : ('will stop the run' as const),
          }
        : {}),
    })
  })
}

/** Length of the shortest piece of each bend in its throat. */
function throatFindings({ pipes }: PatternsInputs, limits: PatternsLimits): Finding[] {
  return pipes.flatMap((pipe) =>
    pipe.parts.flatMap((part, k) => {
      if (!(part.bend > 0)) return []
      // the bend is spread over the part: radius of its axis less that of the pipe, over the share of one end piece
      const joints = jointsOf(part.bend)
      const radius = Math.max(part.startRadius, part.endRadius)
      const throat = part.length / (2 * joints) - radius * Math.tan(part.bend / joints / 2)
      if (throat >= limits.throat.value) return []
      return [
        finding(`throat.${pipe.engine + 1}.${k + 1}`, {
          says:
            throat > 0
              ? say`The bend of ${part.name} leaves ${inMm(throat, 0.1)} of sheet in its throat.`
              : say`The bend of ${part.name} is tighter than the pipe: its pieces overlap by ${inMm(-throat, 0.1)} in the throat.`,
          value: throat,
          unit: 'm',
          standing: 'watch',
          because: [{ says: say`wanted: ${inMm(limits.throat.value, 0.1)}`, link: part.path }],
          act: say`make ${part.name} ${inMm(2 * joints * (limits.throat.value - throat))} longer, or bend it less`,
          harm: 'costs speed',
        }),
      ]
    }),
  )
}

export function patternsFindings(
  inputs: PatternsInputs,
  { ways }: PatternsAnswer,
  limits: PatternsLimits,
): Finding[] {
  const lost = inputs.pipes.filter((p) => p.route && !ways.some((w) => w.pipe === p))
  return [
    ...lost.map((p) =>
      finding(`aims.${p.engine + 1}`, {
        says: say`The flange of ${p.name} aims at itself, so that the way of its pipe is not known.`,
        standing: 'unknown',
        because: [{ says: 'flange and what it aims at are the same place', link: `${p.at}.route.aims` }],
      }),
    ),
    ...ways.flatMap((w) => [...endFinding(w, limits), ...gapFindings(w, limits)]),
    ...throatFindings(inputs, limits),
  ]
}
