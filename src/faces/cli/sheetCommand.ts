import type { Craft } from '../../craft/index.ts'
import { pdfOf } from '../../drawing/pdf.ts'
import { svgOf } from '../../drawing/svg.ts'
import { type AskSheet, askContent, askSheet } from '../../whole/asking/askSheet.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { NotBalanced } from '../../whole/push/craftModel.ts'
import { solveBalance } from '../../whole/push/solveBalance.ts'
import { fileStore } from './engineStore.ts'
import { craftWithLog } from './logCommand.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { save } from './planCommand.ts'
import { progressLine } from './progress.ts'

/** `wakewright sheet CRAFT`: the page to ask a stranger with. */
export async function sheetCommand(
  file: string,
  options: { to?: string; question?: string; json?: boolean; units: string },
): Promise<number> {
  const { to, question } = options
  const { units } = unitsOf('sheet', { ...options, question: undefined } as { units: string })
  if (to !== undefined) sheetFormat('sheet', '--to', to)
  const { craft, log } = craftWithLog(file)
  const balance = balanceOf(craft)
  const setting = {
    log,
    units,
    ...(balance ? { balance } : {}),
    ...(question === undefined ? {} : { question }),
  }
  if (options.json) printJson(askContent(craft, setting))
  const made = askSheet(craft, setting)
  if (to === undefined) {
    if (!options.json) print(made.text)
    return exit.fine
  }
  await writeSheet(to, made, options.json)
  return exit.fine
}

/** What a file name ends in, or BadInput naming what can be written. */
function sheetFormat(command: string, option: string, to: string): 'pdf' | 'svg' | 'txt' {
  const ending = /\.(pdf|svg|txt)$/i.exec(to)?.[1]
  if (ending) return ending.toLowerCase() as 'pdf' | 'svg' | 'txt'
  throw new BadInput([
    /\.png$/i.test(to)
      ? `${command}: "${to}": the app saves a PNG; here it is .pdf, .svg or .txt`
      : `${command}: ${option} "${to}" ends in none of .pdf, .svg, .txt`,
  ])
}

/** Writes a sheet to ask with by the ending of the file's name. */
export async function writeSheet(to: string, made: AskSheet, quiet = false): Promise<void> {
  const format = sheetFormat('ask', '--sheet', to)
  const { sheet, text } = made
  await save(
    to,
    format === 'pdf' ? await pdfOf([sheet], sheet.title) : format === 'svg' ? svgOf(sheet) : text,
  )
  if (!quiet)
    print(
      `Written to ${to}. Read it through before you hand it on: names that begin a sentence cannot be told from other words.`,
    )
}

/** With ranges; undefined when the craft cannot be balanced. */
function balanceOf(craft: Craft) {
  const line = progressLine()
  const engines = answerEngines(craft, { store: fileStore(), coarse: true, progress: line.show })
  line.end()
  try {
    return solveBalance(craft, engines ? { solved: engines.solved } : {})
  } catch (error) {
    if (error instanceof NotBalanced) return undefined
    throw error
  }
}
