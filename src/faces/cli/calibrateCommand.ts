import { styleText } from 'node:util'
import { printed } from '../../base/answers/sentence.ts'
import { giveFiles } from '../../craft/index.ts'
import { answerEngines } from '../../whole/breath/engineAnswers.ts'
import { calibrate } from '../../whole/calibrate/calibrate.ts'
import {
  calibrationSays,
  trustedReadings,
  unfitted,
  withFit,
  withoutFit,
} from '../../whole/calibrate/calibrateSays.ts'
import { MapStore, NotBalanced } from '../../whole/push/craftModel.ts'
import { solveBalance } from '../../whole/push/solveBalance.ts'
import { fileStore } from './engineStore.ts'
import { rewrite } from './keptFile.ts'
import { craftWithLog } from './logCommand.ts'
import { unitsOf } from './lookCommand.ts'
import { BadInput, exit, print, printJson } from './outcome.ts'
import { progressLine } from './progress.ts'

/** `wakewright calibrate CRAFT`: the models fitted to the runs since the last change; --keep writes it into the craft file. Exit code 1 when refused. */
export function calibrateCommand(
  file: string,
  options: { runs?: string; keep?: boolean; forget?: boolean; json?: boolean; units: string },
): number {
  const { units } = unitsOf('calibrate', options)
  const { runs, keep, forget } = options
  if (keep && forget) throw new BadInput(['calibrate: --keep or --forget, not both'])
  if (runs !== undefined && !/^\d{1,6}(\s*,\s*\d{1,6})*$/.test(runs))
    throw new BadInput([`calibrate: --runs "${runs}" is not a list of numbers of log show, such as 3,5`])
  const { craft: filed, files, log } = craftWithLog(file)
  if (forget) {
    if (!filed.fitted) print('The craft file holds no fit.')
    else {
      rewrite(file, withoutFit)
      print(`The fit is taken out of ${file}; it stands in ${file}.before still.`)
    }
    return exit.fine
  }
  const readings = trustedReadings(log, runs?.split(',').map(Number))
  if (readings.length === 0)
    throw new BadInput([
      `${file}: no run since the last change left a reading of pull, rpm or top speed; write one down: wakewright log add CRAFT run "tied up" --reading pull="21.5 kg"`,
    ])
  const craft = unfitted(filed)
  giveFiles(craft, files)
  const line = progressLine()
  const engines = answerEngines(craft, { store: fileStore(), coarse: true, progress: line.show })
  line.end()
  const setting = { maps: new MapStore(), ...(engines ? { solved: engines.solved } : {}) }
  const found = (() => {
    try {
      return calibrate(craft, solveBalance(craft, { ...setting, oneDead: false }), readings, setting)
    } catch (error) {
      if (error instanceof NotBalanced) throw new BadInput([`${file}: ${error.path}: ${error.message}`])
      throw error
    }
  })()
  const says = calibrationSays(found).map((s) => printed(s, units))
  if (options.json) printJson({ units: { rotation: 'rev/s', pull: 'N', topSpeed: 'm/s' }, says, ...found })
  else print([`\n${styleText('bold', craft.name)}\n`, ...says].join('\n'))
  if (found.refused) return exit.stop
  if (keep) rewrite(file, (now) => withFit(withoutFit(now), found))
  if (!options.json)
    print(
      keep
        ? `Kept in ${file}; take it out with calibrate --forget.`
        : 'Nothing is kept; with --keep the balance goes on from here.',
    )
  return exit.fine
}
