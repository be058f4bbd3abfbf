import type { Craft } from '../../craft/index.ts'
import { pdfOf } from '../../drawing/pdf.ts'
import { svgOf } from '../../drawing/svg.ts'
import { askContent, askSheet } from '../../whole/asking/askSheet.ts'
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
  if (to !== undefined && !/\.(pdf|svg|txt)$/i.test(to))
    throw new BadInput([
      /\.png$/i.test(to)
        ? `sheet: "${to}": the app saves a PNG; here it is .pdf, .svg or .txt`
        : `sheet: --to "${to}" ends in none of .pdf, .svg, .txt`,
    ])
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
  await save(
    to,
    /\.pdf$/i.test(to)
      ? await pdfOf([made.sheet], made.sheet.title)
      : /\.svg$/i.test(to)
        ? svgOf(made.sheet)
        : made.text,
  )
  if (!options.json)
    print(
      `Written to ${to}. Read it through before you hand it on: names that begin a sentence cannot be told from other words.`,
    )
  return exit.fine
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
