import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { styleText } from 'node:util'
import { formatProblem } from '../../craft/index.ts'
import { craftToSearch } from '../../jobs/designTrialsJob.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { NotBalanced } from '../../whole/push/craftModel.ts'
import { designAnswer } from '../../whole/push/designAnswer.ts'
import { designFindings } from '../../whole/push/designFindings.ts'
import type { TryDesigns } from '../../whole/push/designSearch.ts'
import type { DesignAnswer } from '../../whole/push/designTypes.ts'
import { fileStore } from './engineStore.ts'
import { choiceText, inColour } from './figuresText.ts'
import { findingText, unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { openPool, type Pool } from './pool.ts'
import { progressLine } from './progress.ts'
import { readCraftFile } from './readCraftFile.ts'

/** Thrown between two steps once the search is called off. */
class CalledOff extends Error {}

/** `wakewright choose`: the impeller and nozzle that do best on a craft. Called off (Ctrl-C), it prints the best so far. */
export async function choose(
  file: string,
  options: { json?: boolean; draw?: boolean; units: string },
): Promise<number> {
  const units = unitsOf('choose', options)
  const on = readCraftFile(file)
  for (const w of on.warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const line = progressLine()
  const engines = answerEngines(on.craft, { store: fileStore(), progress: line.show })
  const of = { text: on.text, files: on.files, ...(engines ? { solved: [...engines.solved] } : {}) }
  const off = new AbortController()
  const stop = () => off.abort()
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  const pool = existsSync(resolve(dirname(fileURLToPath(import.meta.url)), 'worker.js'))
    ? openPool()
    : undefined
  const craft = craftToSearch(of)
  let best: DesignAnswer | undefined
  try {
    best = await designAnswer(craft, {
      ...(engines ? { solved: engines.solved } : {}),
      progress: line.show,
      early: (answer) => {
        best = answer
      },
      check: () => {
        if (off.signal.aborted) throw new CalledOff()
      },
      ...(pool ? { tryMany: dealtOut(pool, off.signal, of) } : {}),
    })
  } catch (error) {
    if (error instanceof NotBalanced) throw new BadInput([`${file}: ${error.path}: ${error.message}`])
    if (!off.signal.aborted || !best) throw error
    process.stderr.write('Called off: this is the best so far.\n')
  } finally {
    line.end()
    process.off('SIGINT', stop)
    process.off('SIGTERM', stop)
    await pool?.close()
  }
  const findings = designFindings(craft, best)
  if (options.json)
    printJson({ units: { pull: 'N', topSpeed: 'm/s', rotation: 'rev/s', pitch: 'm' }, findings, ...best })
  else {
    print(`\n${styleText('bold', craft.name)}\n`)
    for (const f of findings) print(findingText(f, units.units))
    if (options.draw) print(choiceText(best, units.units, process.stdout.columns ?? 96, inColour()))
  }
  return exit.fine
}

/** Requests dealt out to as many threads as there are cores. */
function dealtOut(pool: Pool, signal: AbortSignal, of: Parameters<typeof craftToSearch>[0]): TryDesigns {
  return async (requests) => {
    const hands = Math.min(Math.max(1, availableParallelism()), requests.length)
    const parts = Array.from({ length: hands }, (_, h) => requests.filter((_r, i) => i % hands === h))
    const answers = await Promise.all(
      parts.map((part) => pool.run('design-trials', { ...of, requests: part }, undefined, signal)),
    )
    return requests.map((_, i) => answers[i % hands]![Math.floor(i / hands)]!)
  }
}
