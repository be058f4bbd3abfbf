/** What a run cannot say, each with what to do so that the next one can. */
import { inMinutes, inPercent, inSeconds } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { HeardEpisode } from './episodes.ts'
import type { RankedCause } from './rankingTypes.ts'
import type { RankLimits } from './rankLimits.ts'
import type { RunSession } from './session.ts'

export interface CannotSaySetting {
  session: RunSession
  episodes: readonly HeardEpisode[]
  causes: readonly RankedCause[]
  engines: number
  shared: boolean
}

const open = (id: string, says: Sentence, act: Sentence, because: Sentence[] = []): Finding => ({
  id: `cannot-say-${id}`,
  question: 'runs',
  says,
  standing: 'unknown',
  because: because.map((b) => ({ says: b })),
  act,
  sources: [],
})

/** s in which all engines pulled together without a break. */
const together = (episodes: readonly HeardEpisode[]): number =>
  Math.max(
    0,
    ...episodes.filter((e) => e.kind === 'both-pulling' || e.kind === 'pulling').map((e) => e.to - e.from),
  )

export function cannotSayOf(
  { session, episodes, causes, engines, shared }: CannotSaySetting,
  limits: RankLimits,
): Finding[] {
  const out: Finding[] = []
  const shareOf = (id: string) => causes.filter((c) => c.id === id).reduce((a, c) => a + c.share, 0)
  const seen = new Set(session.observed?.map((o) => o.id))
  const long = together(episodes)
  const least = limits.together.value
  const measured = session.answered?.some((a) => a.check === 'pitch') ?? false
  if (long < least && !measured)
    out.push(
      open(
        'pitch',
        engines > 1
          ? say`Whether the impeller is too steep this run cannot tell: the engines never pulled together for ${inSeconds(least, 1)} at a stretch.`
          : say`Whether the impeller is too steep this run cannot tell: the engine never pulled for ${inSeconds(least, 1)} on end.`,
        say`Run ${engines > 1 ? 'all engines' : 'the engine'} tied up at full throttle for ${inSeconds(2 * least, 1)}, once everything fires.`,
        [say`longest such stretch: ${inSeconds(long)}`],
      ),
    )
  if (!(session.pull && session.pull > 0) && session.hearing)
    out.push(
      open(
        'pump',
        'Whether the pump gives what it should this run cannot tell: no pull was read beside the sound.',
        say`Read the pull three times on a luggage scale at full throttle, with the recording running; it takes ${inMinutes(600)}.`,
      ),
    )
  if (session.kind !== 'under way' && !seen.has('pace') && session.hearing)
    out.push(
      open(
        'hull',
        'Whether the hull drags too much this run cannot tell: its speed was not measured.',
        say`Time it over a measured distance, both ways; it takes ${inMinutes(480)}.`,
      ),
    )
  const dead = causes.find((c) => c.id === 'one-dead')
  if (shared && dead && dead.share > 0.25 && !dead.engine)
    out.push(
      open(
        'which',
        'Which engine stopped firing this run cannot tell: on one shaft both sound as one.',
        'Drip water on both exhausts right after the stop: the one that stays wet is the one.',
      ),
    )
  const fuel = shareOf('lean')
  if (fuel > 0.15 && fuel < limits.named.value && !seen.has('plug') && !seen.has('choke'))
    out.push(
      open(
        'mixture',
        say`Whether fuel is short stays open at ${inPercent(fuel)}: neither a plug nor the choke was tried.`,
        say`Half choke for ${inSeconds(3, 1)} at a throttle that is kept, then read the plugs.`,
      ),
    )
  return out
}

/** The first cause is far enough ahead to be called the answer. */
export function isDecided(causes: readonly RankedCause[], limits: RankLimits): boolean {
  const [first, second] = causes
  if (!first) return false
  return (
    first.share >= limits.decided.value &&
    (!second || first.share >= limits.ahead.value * second.share || second.share > 0.5)
  )
}
