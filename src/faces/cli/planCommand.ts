import { writeFileSync } from 'node:fs'
import { styleText } from 'node:util'
import { printed } from '../../base/answers/sentence.ts'
import { formatProblem } from '../../craft/index.ts'
import { pdfOf } from '../../drawing/pdf.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { lookAt } from '../../whole/look.ts'
import { nextChange } from '../../whole/next/nextChange.ts'
import { planCard, planText } from '../../whole/plan/planCard.ts'
import { runPlan } from '../../whole/plan/runPlan.ts'
import { MapStore } from '../../whole/push/craftModel.ts'
import { fileStore } from './engineStore.ts'
import { craftWithLog } from './logCommand.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'

/** `wakewright plan CRAFT`: what to run, where the phone stands, what to read, what each step should sound like; --to a run card. */
export async function plan(
  file: string,
  options: { to?: string; json?: boolean; units: string },
): Promise<number> {
  const { units } = unitsOf('plan', options)
  const { to } = options
  if (to !== undefined && !/\.(pdf|txt)$/i.test(to))
    throw new BadInput([`plan: --to "${to}" ends in neither .pdf nor .txt`])
  const { craft, log, warnings } = craftWithLog(file)
  for (const w of warnings) process.stderr.write(`${formatProblem(w)}\n`)
  const line = progressLine()
  const engines = answerEngines(craft, { store: fileStore(), coarse: true, progress: line.show })
  line.end()
  const maps = new MapStore()
  const { findings, balance } = lookAt(craft, { ...(engines ? { engines } : {}), maps })
  if (!balance)
    throw new BadInput([
      `${file}: the craft cannot be balanced yet, so nothing can be predicted: see wakewright look`,
    ])
  const solved = engines?.solved
  const made = runPlan(craft, balance, { findings, log, maps, ...(solved ? { solved } : {}) })
  const next = nextChange(craft, balance, { findings, log })
  if (options.json)
    printJson({ units: { rotation: 'rev/s', pull: 'N', speed: 'm/s', minutes: 'min' }, ...made, next })
  else if (to === undefined) print(`\n${styleText('bold', craft.name)}\n\n${planText(made, units)}`)
  if (to !== undefined) {
    await save(
      to,
      /\.pdf$/i.test(to) ? await pdfOf(planCard(made, craft.name, units), 'Run card') : planText(made, units),
    )
    if (!options.json) print(`${printed(made.says, units)}\nThe run card is in ${to}.`)
  }
  if (!options.json) {
    print(`\nThe next change: ${printed(next.says, units)}`)
    if (next.change) print(printed(next.change.show, units))
  }
  return exit.fine
}

/** Writes a file the reader asked for; throws BadInput when it cannot be. */
export async function save(path: string, what: Uint8Array | string): Promise<void> {
  try {
    writeFileSync(path, what)
  } catch (error) {
    throw new BadInput([`"${path}" cannot be written (${(error as NodeJS.ErrnoException).code})`])
  }
}
