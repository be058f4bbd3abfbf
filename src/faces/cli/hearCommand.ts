import { basename } from 'node:path'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { makeChannelPicker } from '../../trades/sound/hearSamples.ts'
import { type HearOptions, type Listener, makeListener } from '../../trades/sound/listener.ts'
import { expectsOf, hearOptionsOf } from '../../trades/sound/soundFromCraft.ts'
import { runInputs, soundTrade } from '../../trades/sound/soundTrade.ts'
import type { BesideRun } from '../../whole/runs/besideRun.ts'
import { decodeFile } from './decodeSound.ts'
import { besideCraft, type ToldOptions, typedTold } from './hearBeside.ts'
import { hearingJson, hearingText, runFindingsOf, type SolvedRun } from './hearText.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { readCraftFile } from './readCraftFile.ts'
import { makeTidier } from './tidy.ts'

export interface RunHearOptions extends HearOptions {
  ffmpeg?: string
  /** the reader's units of the text */
  units?: DisplaySystem
}

export interface HeardFile {
  exitCode: number
  text: string
  json: unknown
  hearing?: Hearing
}

/** Listens to a recording on disk. Exit code 0 = listened, also when no engine was heard; 1 = a finding says stop; 2 = no sound could be read. */
export async function runHear(
  path: string,
  options: RunHearOptions = {},
  beside?: (heard: Hearing) => { run: BesideRun; craft: Craft },
): Promise<HeardFile> {
  const name = basename(path)
  let listener: Listener | undefined
  const picker = makeChannelPicker(options)
  const tidy = makeTidier()
  const cancelled = () => {
    tidy()
    return options.cancelled?.() ?? false
  }
  const listen = (stretches: readonly Float32Array[], rate: number, expected: number | undefined) => {
    for (const x of stretches) {
      listener ??= makeListener(rate, { ...options, cancelled, ...(expected ? { expected } : {}) })
      listener.push(x)
    }
  }
  const decoded = await decodeFile(
    path,
    (channels, rate, expected) => listen(picker.push(channels, rate), rate, expected),
    options.ffmpeg,
  )
  listen(picker.end(), decoded.rate, undefined)
  if (!decoded.ok || !listener) {
    const says = decoded.flags.map((f) => f.text)
    return {
      exitCode: exit.badInput,
      text: `${name}: ${says.join(' ')}\n`,
      json: { recording: name, error: says.join(' '), flags: decoded.flags },
    }
  }
  const heard = (listener as Listener).finish()
  heard.flags.unshift(...decoded.flags)
  const run = solvedRun(heard, beside?.(heard))
  const stop = runFindingsOf(run).some((f) => f.standing === 'stop')
  return {
    exitCode: stop ? exit.stop : exit.fine,
    text: hearingText(name, run, options.units ?? 'metric'),
    json: hearingJson(name, run),
    hearing: run.inputs.hearing,
  }
}

/** A hearing with what a craft says beside it, answered. */
function solvedRun(heard: Hearing, beside?: { run: BesideRun; craft: Craft }): SolvedRun {
  const inputs = beside
    ? runInputs({ ...beside.run, hearing: beside.run.hearing ?? heard }, beside.craft)
    : runInputs({ hearing: heard })
  return {
    inputs,
    answer: soundTrade.answer(inputs),
    ...(beside ? { besideSays: beside.run.says } : {}),
  }
}

export interface HearCommandOptions extends ToldOptions {
  json?: boolean
  /** metric or inch, as typed */
  units?: string
  craft?: string
  engines?: string
  cylinders?: string
}

/** Listening options of the command line; what is typed goes before what the craft file says. Throws BadInput. */
function typedOptions({ engines, cylinders }: HearCommandOptions, craft: Craft | undefined): HearOptions {
  const from = craft ? hearOptionsOf(craft) : {}
  const out: HearOptions = { ...from }
  if (engines !== undefined) {
    if (engines !== '1' && engines !== '2' && engines !== 'auto')
      throw new BadInput([`hear: --engines "${engines}" is not 1, 2 or auto`])
    out.engines = engines === 'auto' ? 'auto' : engines === '1' ? 1 : 2
  }
  if (cylinders !== undefined) {
    if (!/^[1-8]$/.test(cylinders)) throw new BadInput([`hear: --cylinders "${cylinders}" is not 1 to 8`])
    out.cylinders = Number(cylinders)
  }
  return out
}

/** `wakewright hear RECORDING [--json] [--units SYSTEM] [--craft FILE]`. Returns the exit code. */
export async function hearCommand(path: string, options: HearCommandOptions = {}): Promise<number> {
  const { units = 'metric' } = options
  if (units !== 'metric' && units !== 'inch')
    throw new BadInput([`hear: --units "${units}" is not metric or inch`])
  const craft = options.craft === undefined ? undefined : readCraftFile(options.craft).craft
  const told = typedTold(options, craft !== undefined)
  const heard = await runHear(
    path,
    { ...typedOptions(options, craft), units },
    craft && ((h) => ({ run: besideCraft(h, craft, expectsOf(craft), told), craft })),
  )
  if (options.json) printJson(heard.json)
  else if (heard.exitCode === exit.badInput) process.stderr.write(heard.text)
  else print(heard.text)
  return heard.exitCode
}
