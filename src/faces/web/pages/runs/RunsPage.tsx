import { useCallback, useEffect, useMemo } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { hearOptionsOf } from '../../../../trades/sound/soundFromCraft.ts'
import { runInputs, soundTrade } from '../../../../trades/sound/soundTrade.ts'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { answerOf } from '../../parts/pageAnswer.ts'
import { QuestionPage } from '../../parts/QuestionPage.tsx'
import { several } from '../../parts/several.ts'
import { app } from '../../state/app.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { bench, useBench } from './bench.ts'
import { foldsOfCraft } from './craftFolds.tsx'
import { useDraft } from './draft.ts'
import { useExpected } from './expected.ts'
import { inventedOrder } from './inventedOrder.ts'
import { KeptRuns, useKeptRuns } from './KeptRuns.tsx'
import { Live } from './live/Live.tsx'
import { useCraftLog } from './log/useCraftLog.ts'
import { OpenRecording } from './OpenRecording.tsx'
import { Bench, ToRecord } from './RunsBench.tsx'
import { RunView } from './RunView.tsx'
import { foldsOfRun } from './runsFolds.tsx'
import { ToldPanel } from './ToldPanel.tsx'
import { useRanking } from './useRanking.ts'
import './runs.css'

/** octaves settled by the craft file, to be told above the picture */
const chosen = (h: Hearing | undefined) =>
  (h?.flags ?? []).filter((f) => f.code === 'in-turn' || f.code === 'octave-chosen')

const asks = 'What happened, and what next?'

/** What happened? A recording read to engine speeds and events, beside what the model expected. */
export function RunsPage() {
  const craft = useApp((s) => s.craft)
  return craft ? <WithCraft craft={craft} /> : null
}

function WithCraft({ craft }: { craft: Craft }) {
  const { recording, told, work, fault } = useBench()
  const looked = useApp((s) => s.looked)
  const balance = looked?.craft === craft ? looked.balance : undefined
  const craftId = useApp((s) => s.work?.id)
  const options = useMemo(() => hearOptionsOf(craft), [craft])
  useDraft(craftId, options)
  const open = useCallback(
    (file: File) => {
      if (!/\.gpx$/i.test(file.name)) return void bench.open(file, options)
      // a track goes to the run on the bench
      if (bench.has()) void bench.addGpx(file).then((says) => says && app.say(says))
      else app.say('Open the recording first, then add its GPX track.')
    },
    [options],
  )
  const expected = useExpected(recording?.answer?.hearing, told, craft)
  const { hearing } = expected
  const run = useMemo(() => {
    if (!hearing) return undefined
    const inputs = runInputs({ ...expected, hearing }, craft)
    return { inputs, answer: soundTrade.answer(inputs) }
  }, [expected, hearing, craft])
  const headline = useMemo(() => run && soundTrade.headline!(run, soundTrade.limits), [run])
  const findings = useMemo(() => (run ? soundTrade.judge(run, soundTrade.limits) : []), [run])
  const all = useMemo(() => (headline ? [headline, ...findings] : []), [headline, findings])
  const listening = recording !== undefined && !hearing
  useEffect(() => {
    // what stood before stands until the new one is heard
    if (!listening) app.found('runs', all)
  }, [listening, all])
  const flags = [...(recording?.flags ?? []), ...chosen(hearing)]

  const kept = useKeptRuns()
  const own = useCraftLog(craft)
  const weighed = useRanking(hearing, told, craft, own.text)
  const { ranking } = weighed
  const live = (
    <Live options={options} expected={balance && 60 * balance.tiedUpRotation.value} onRecorded={open} />
  )
  return (
    <QuestionPage
      question="runs"
      asks={asks}
      answer={
        headline ? answerOf(headline) : { says: recording ? `Listening to “${recording.name}”…` : nothingYet }
      }
      status={work && <JobProgress says={work.says} part={work.part} onCancel={bench.cancel} />}
      choose={
        <Bench fault={fault} flags={flags} invented={recording?.invented === true}>
          <OpenRecording main={!recording} onFile={open} />
          <Button onPress={() => void bench.invent(inventedOrder(craft, balance), options)}>
            Try an invented run
          </Button>
          {recording && (
            <Button className="plain" onPress={bench.close}>
              Put it away
            </Button>
          )}
        </Bench>
      }
      picture={
        recording?.answer ? (
          <RunView recording={recording} hearing={hearing} options={options} />
        ) : (
          recording === undefined && live
        )
      }
      panel={
        recording?.answer ? (
          <ToldPanel told={told} onAgain={() => void bench.again(options)} />
        ) : recording ? (
          <span />
        ) : (
          <ToRecord />
        )
      }
      inputs={[]}
      own={findings}
      folds={[
        ...(run
          ? foldsOfRun({
              run,
              told,
              work,
              options,
              expected,
              weighed,
              playable: recording?.audio !== undefined,
            })
          : []),
        ...(recording
          ? [
              {
                id: 'live',
                title: 'Tachometer',
                says: 'engine speed as it is, and a recording',
                children: live,
              },
            ]
          : []),
        {
          id: 'kept',
          title: 'Runs of this craft',
          says: kept.runs.length > 0 ? several(kept.runs.length, 'run') : 'none kept yet',
          children: <KeptRuns options={options} kept={kept} />,
        },
        ...foldsOfCraft({ craft, own, kept, balance, ...(ranking ? { ranking } : {}) }),
      ]}
      cautions={soundTrade.cautions ?? []}
      method={soundTrade.method ?? []}
    />
  )
}

const nothingYet =
  'No run on the bench yet: record one with a phone and open it here, and you get each engine’s speed, and when it started, stalled or raced.'
