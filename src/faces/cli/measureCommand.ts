import { availableParallelism } from 'node:os'
import { styleText } from 'node:util'
import { printed } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { fieldAt, formatProblem } from '../../craft/index.ts'
import { joinDeciding } from '../../whole/deciding.ts'
import { type Deciding, type DecidingValue, decidingSays, turnSays } from '../../whole/decidingSays.ts'
import { unitsOf } from './lookCommand.ts'
import { exit, print, printJson } from './outcome.ts'
import { openPool } from './pool.ts'
import { progressLine } from './progress.ts'
import { readCraftFile } from './readCraftFile.ts'

/** `wakewright measure`: which values would change a decision, and how to measure them. Called off (Ctrl-C), it prints those found so far. */
export async function measure(file: string, options: { json?: boolean; units: string }): Promise<number> {
  const { units } = unitsOf('measure', options)
  const on = readCraftFile(file)
  for (const w of on.warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const line = progressLine()
  const off = new AbortController()
  const stop = () => off.abort()
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  const of = Math.max(1, availableParallelism())
  const pool = openPool(of)
  const sofar: (Deciding | undefined)[] = Array.from({ length: of })
  const parts = sofar.map(() => 0)
  try {
    await Promise.all(
      sofar.map(async (_, hand) => {
        sofar[hand] = await pool.run(
          'deciding',
          { text: on.text, files: on.files, hand, of },
          (part, says) => {
            parts[hand] = part
            line.show(parts.reduce((a, b) => a + b, 0) / of, says)
          },
          off.signal,
          (early) => {
            sofar[hand] = early
          },
        )
      }),
    )
  } catch (error) {
    if (!off.signal.aborted) throw error
    process.stderr.write('Called off: these were found so far.\n')
  } finally {
    line.end()
    process.off('SIGINT', stop)
    process.off('SIGTERM', stop)
    await pool.close()
  }
  const found = joinDeciding(sofar.filter((one) => one !== undefined))
  if (options.json) printJson({ units: 'SI', ...found, final: found.final && !off.signal.aborted })
  else {
    print(`\n${styleText('bold', on.craft.name)}\n`)
    print(printed(decidingSays(found), units))
    if (found.inside > 0)
      print(
        `Not tried one by one: ${found.inside} inside engines that are simulated from their ports and pipe.`,
      )
    found.values.forEach((value, i) => {
      print(valueText(value, i + 1, units))
    })
  }
  return exit.fine
}

function valueText(value: DecidingValue, number: number, units: DisplaySystem): string {
  const how = fieldAt(value.path)?.measure
  const lines = [
    `${String(number).padStart(3)}. ${styleText('bold', value.path)}${how ? `: ${how.what}, with ${how.with}, ${how.minutes} min` : ''}`,
  ]
  for (const { at, turns } of value.ends)
    for (const turn of turns) lines.push(`       ${printed(turnSays(value, at, turn), units)}`)
  return lines.join('\n')
}
