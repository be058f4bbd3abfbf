import { printed } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { observations } from '../../trades/sound/observations.ts'
import { parseReadings, readPull } from '../../trades/sound/pull.ts'
import { expectsOf, hearOptionsOf } from '../../trades/sound/soundFromCraft.ts'
import { askSheet } from '../../whole/asking/askSheet.ts'
import { causesOf } from '../../whole/faults/causes.ts'
import { checksFor } from '../../whole/faults/nextChecks.ts'
import { observables } from '../../whole/faults/observables.ts'
import type { RunRanking } from '../../whole/faults/rankingTypes.ts'
import { rankRun } from '../../whole/faults/rankRun.ts'
import type { AnsweredCheck, RunSession, SessionObserved } from '../../whole/faults/session.ts'
import { askText } from './askText.ts'
import { balanceOf, besideCraft, type ToldOptions, typedTold } from './hearBeside.ts'
import { runHear } from './hearCommand.ts'
import { craftWithLog } from './logCommand.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { writeSheet } from './sheetCommand.ts'

export interface AskOptions extends ToldOptions {
  sheet?: string
  json?: boolean
  units: string
  /** observation=state, as often as wanted; `@` and an episode behind it for one episode */
  said?: readonly string[]
  /** check=outcome */
  found?: readonly string[]
  /** cause=weight, in place of the weight beforehand */
  weigh?: readonly string[]
}

const parted = (typed: string): [string, string] => {
  const i = typed.indexOf('=')
  return i < 0 ? [typed.trim(), ''] : [typed.slice(0, i).trim(), typed.slice(i + 1).trim()]
}

/** States of an observation, those of the list shown in the app first. */
const statesOf = (id: string): readonly string[] => {
  const all = [
    observations.find((o) => o.id === id)?.states ?? [],
    observables.find((o) => o.id === id)?.states ?? [],
  ]
  return [...new Set(all.flat())]
}

/** Reads `--said`; throws BadInput with what may be said. */
export function typedSaid(said: readonly string[] = []): SessionObserved[] {
  return said.map((typed) => {
    const [named, rest] = parted(typed)
    const [state = '', episode] = rest.split('@')
    const states = statesOf(named)
    if (states.length === 0)
      throw new BadInput([
        `ask: --said "${typed}": "${named}" is not one of ${[...new Set([...observations, ...observables].map((o) => o.id))].join(', ')}`,
      ])
    if (!states.includes(state))
      throw new BadInput([`ask: --said "${typed}": ${named} is one of ${states.join(', ')}`])
    return { id: named, state, ...(episode ? { episode } : {}) }
  })
}

function typedFound(found: readonly string[] = [], session: Pick<RunSession, 'craft'>): AnsweredCheck[] {
  const checks = checksFor(session.craft)
  return found.map((typed) => {
    const [id, outcome] = parted(typed)
    const check = checks.find((c) => c.id === id)
    if (!check)
      throw new BadInput([
        `ask: --found "${typed}": "${id}" is not one of ${checks.map((c) => c.id).join(', ')}`,
      ])
    const states = observables.find((o) => o.id === check.reveals)!.states
    if (!states.includes(outcome))
      throw new BadInput([`ask: --found "${typed}": ${id} finds one of ${states.join(', ')}`])
    return { check: id, outcome }
  })
}

/** Reads `--weigh`; throws BadInput with the causes there are. */
export function typedWeights(weigh: readonly string[] | undefined, craft: Craft): Record<string, number> {
  if (!weigh || weigh.length === 0) return {}
  const known = causesOf(craft).map((c) => c.id)
  return Object.fromEntries(
    weigh.map((typed) => {
      const [id, text] = parted(typed)
      const weight = Number(text)
      if (!known.includes(id))
        throw new BadInput([`ask: --weigh "${typed}": "${id}" is not one of ${known.join(', ')}`])
      if (text === '' || !(weight >= 0 && weight <= 1000))
        throw new BadInput([`ask: --weigh "${typed}": the weight is a number from 0 to 1000`])
      return [id, weight] as const
    }),
  )
}

/** Every stretch that was named is one of the run; throws BadInput with those there are. */
export function placed(
  observed: readonly SessionObserved[],
  { episodes }: Pick<RunRanking, 'episodes'>,
): void {
  for (const { id, state, episode } of observed)
    if (episode !== undefined && !episodes.some((e) => e.id === episode))
      throw new BadInput([
        `ask: --said "${id}=${state}@${episode}": ${
          episodes.length > 0
            ? `"${episode}" is not one of ${episodes.map((e) => e.id).join(', ')}`
            : 'without a recording there are no stretches; leave it out'
        }`,
      ])
}

/** `wakewright ask CRAFT [RUN]`: what went wrong, what the run cannot say, the next check. Exit code 0; 2 when nothing could be read. */
export async function ask(file: string, run: string | undefined, options: AskOptions): Promise<number> {
  const { units } = unitsOf('ask', { units: options.units })
  const { craft, log } = craftWithLog(file)
  const observed = typedSaid(options.said)
  const answered = typedFound(options.found, { craft })
  const weights = typedWeights(options.weigh, craft)
  if (run === undefined && observed.length === 0 && answered.length === 0)
    throw new BadInput(['ask: name a recording, or say what was seen: --said choke=helped'])
  const told = typedTold(options, true)
  const known = balanceOf(craft)
  let hearing: Hearing | undefined
  if (run !== undefined) {
    const heard = await runHear(run, { ...hearOptionsOf(craft), units }, (h) => ({
      run: besideCraft(h, craft, expectsOf(craft), told),
      craft,
    }))
    if (heard.exitCode === exit.badInput || !heard.hearing) throw new BadInput([heard.text.trim()])
    hearing = heard.hearing
  }
  const pull = told ? readPull(parseReadings(told.readings))?.force.value : undefined
  const ranking = rankRun({
    craft,
    ...known,
    hearing,
    kind: told?.kind ?? 'not said',
    observed,
    answered,
    weights,
    pull,
    log: log.entries.map(({ entry }) => entry),
  })
  placed(observed, ranking)
  if (options.json) {
    const text = (s: Parameters<typeof printed>[0]) => printed(s, units)
    printJson({
      ...ranking,
      episodes: ranking.episodes.map((e) => ({ ...e, says: text(e.says) })),
      causes: ranking.causes.map((c) => ({
        ...c,
        says: text(c.says),
        for: c.for.map(text),
        against: c.against.map(text),
      })),
      cannotSay: ranking.cannotSay.map((f) => ({ id: f.id, says: text(f.says), act: text(f.act ?? '') })),
      doubts: ranking.doubts.map((f) => ({ id: f.id, says: text(f.says), act: text(f.act ?? '') })),
      checks: ranking.checks.map((c) => ({ ...c, act: text(c.act) })),
      units: { share: '1', from: 's', to: 's', minutes: 'min', worth: 'min' },
    })
  } else print(askText(ranking, units))
  if (options.sheet !== undefined) {
    const { balance } = known
    const setting = { log, units, ranking, ...(balance ? { balance } : {}) }
    await writeSheet(options.sheet, askSheet(craft, setting))
  }
  return exit.fine
}
