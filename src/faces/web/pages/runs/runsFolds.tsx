import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import type { RunHeard, RunInputs } from '../../../../trades/sound/soundTrade.ts'
import type { FoldPart } from '../../parts/Fold.tsx'
import { several } from '../../parts/several.ts'
import { Beside } from './Beside.tsx'
import { bench, type Settings } from './bench.ts'
import { Events, eventsSay } from './Events.tsx'
import type { Expected } from './expected.ts'
import { Locks } from './Locks.tsx'
import { Numbers } from './RunsNumbers.tsx'
import { ToldMore, toldSays } from './ToldPanel.tsx'
import type { Told } from './told.ts'
import type { Weighed } from './useRanking.ts'
import { WhatWentWrong, wrongSays } from './WhatWentWrong.tsx'

interface Run {
  run: { inputs: RunInputs; answer: RunHeard }
  told: Told
  /** what is under way on the bench */
  work: object | undefined
  options: Settings
  expected: Expected
  /** what may have gone wrong */
  weighed: Weighed
  /** its sound is there, so that the engines can be followed again */
  playable: boolean
}

/** The folds of a run that was heard. */
export function foldsOfRun({ run, told, work, options, expected, weighed, playable }: Run): FoldPart[] {
  const { inputs, answer } = run
  const { hearing } = inputs
  return [
    {
      id: 'events',
      title: 'What happened',
      says: eventsSay(hearing, answer),
      children: <Events hearing={hearing} heard={answer} />,
    },
    ...(answer.length > 0
      ? [
          {
            id: 'wrong',
            title: 'What went wrong',
            says: wrongSays(weighed),
            children: <WhatWentWrong weighed={weighed} told={told} />,
          },
        ]
      : []),
    ...(expected.says
      ? [
          {
            id: 'beside',
            title: 'Beside the model',
            says: expected.says,
            children: expected.prediction && <Beside run={inputs} />,
          },
        ]
      : []),
    {
      id: 'told',
      title: 'What else you know of it',
      says: toldSays(told),
      children: <ToldMore told={told} sync={expected.sync} episodes={weighed.ranking?.episodes ?? []} />,
    },
    ...(playable ? [byHand(hearing, told, work !== undefined, options)] : []),
    ...(answer.length > 0
      ? [
          {
            id: 'runs-numbers',
            title: 'The numbers',
            says: several(answer.length, 'engine'),
            children: <Numbers hearing={hearing} heard={answer} />,
          },
        ]
      : []),
  ]
}

function byHand(hearing: Hearing, told: Told, busy: boolean, options: Settings): FoldPart {
  const count = told.locks.length + told.marks.length
  return {
    id: 'hand',
    title: 'Put a line right by hand',
    says: count > 0 ? `${count} by hand` : 'lock a speed you know, silence a voice',
    children: (
      <Locks
        hearing={hearing}
        locks={told.locks}
        marks={told.marks}
        engines={(told.engines === 'auto' ? options.engines : told.engines) === 1 ? 1 : 2}
        busy={busy}
        onLocks={(locks) => bench.tell({ locks })}
        onMarks={(marks) => {
          bench.tell({ marks })
          void bench.again(options)
        }}
        onAgain={() => void bench.again(options)}
      />
    ),
  }
}
