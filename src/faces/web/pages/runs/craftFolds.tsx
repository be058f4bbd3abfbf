import type { RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import { runsOf } from '../../../../whole/log/craftLog.ts'
import type { Balance } from '../../../../whole/push/balanceTypes.ts'
import type { FoldPart } from '../../parts/Fold.tsx'
import { several } from '../../parts/several.ts'
import type { Craft } from '../../state/craftFile.ts'
import { AskFold } from './AskFold.tsx'
import type { Kept } from './KeptRuns.tsx'
import { FitFold } from './log/FitFold.tsx'
import { LogFold } from './log/LogFold.tsx'
import { SeasonFold } from './log/SeasonFold.tsx'
import type { OwnLog } from './log/useCraftLog.ts'
import { PlanFold } from './plan/PlanFold.tsx'

interface Of {
  craft: Craft
  own: OwnLog
  kept: Kept
  balance: Balance | undefined
  /** the causes of what went wrong, where they were ranked */
  ranking?: RunRanking
}

/** The folds about the craft's runs as a whole: the next one, the log, the season, whom to ask. */
export function foldsOfCraft({ craft, own, kept, balance, ranking }: Of): FoldPart[] {
  const { log } = own
  const runs = runsOf(log).length
  return [
    {
      id: 'plan',
      title: 'The next run',
      says: 'which 20 seconds to run, and what to change after',
      children: <PlanFold craft={craft} log={own.text} ranking={ranking} />,
    },
    {
      id: 'log',
      title: 'The log',
      says: log.entries.length > 0 ? `${log.entries.length} written down` : 'nothing written down yet',
      children: <LogFold craft={craft} own={own} kept={kept} />,
    },
    ...(runs > 0
      ? [
          {
            id: 'season',
            title: 'The season',
            says: several(runs, 'run'),
            children: <SeasonFold log={log} />,
          },
          {
            id: 'fit',
            title: 'Models fitted to the runs',
            says: craft.fitted ? `kept, from ${craft.fitted.runs}` : 'not kept',
            children: <FitFold craft={craft} log={own.text} />,
          },
        ]
      : []),
    {
      id: 'ask',
      title: 'A sheet to ask with',
      says: 'one page a stranger can answer from',
      children: <AskFold craft={craft} balance={balance} log={log} ranking={ranking} />,
    },
  ]
}
