import { useCallback, useEffect, useMemo } from 'react'
import { Button } from 'react-aria-components/Button'
import { worstStanding } from '../../../../base/answers/finding.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { hearOptionsOf } from '../../../../trades/sound/soundFromCraft.ts'
import { runInputs, soundTrade } from '../../../../trades/sound/soundTrade.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { Says } from '../../parts/Says.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { app } from '../../state/app.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import { ChangeLog } from '../craft/ChangeLog.tsx'
import { Beside } from './Beside.tsx'
import { bench, useBench } from './bench.ts'
import { useDraft } from './draft.ts'
import { Events } from './Events.tsx'
import { useExpected } from './expected.ts'
import { inventedOrder } from './inventedOrder.ts'
import { KeptRuns } from './KeptRuns.tsx'
import { Live } from './live/Live.tsx'
import { OpenRecording } from './OpenRecording.tsx'
import { Numbers } from './RunsNumbers.tsx'
import { RunView } from './RunView.tsx'
import { measures } from './runsWords.ts'
import { ToldPanel } from './ToldPanel.tsx'
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
  const units = useApp((s) => s.units)
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

  return (
    <>
      {headline ? (
        <AnswerHeader
          asks={asks}
          says={headline.says}
          confidence={printed(headline.because[0]?.says ?? '', units)}
          standing={worstStanding(all)}
        />
      ) : recording ? (
        <AnswerHeader asks={asks} says={`Listening to “${recording.name}”…`} />
      ) : (
        <EmptyState
          title="No run on the bench yet"
          says="Film or record a run with a phone and open it here: you get each engine’s speed over time, what happened when, and how that compares with what the craft should do. Nothing leaves this machine."
          measures={measures}
        />
      )}
      {recording?.invented && (
        <p className="invented">Invented: this sound was made up from the craft file; nobody recorded it.</p>
      )}
      {fault && (
        <p role="alert" className="fault">
          <strong>{fault.name}</strong>: {fault.says.join(' ')}
        </p>
      )}
      {flags.length > 0 && (
        <ul className="plainlist flags">
          {flags.map((f) => (
            <li key={f.code}>{f.text}</li>
          ))}
        </ul>
      )}
      <div className="row">
        <OpenRecording main={!recording} onFile={open} />
        <Button onPress={() => void bench.invent(inventedOrder(craft, balance), options)}>
          Try an invented run
        </Button>
        {recording && (
          <Button className="plain" onPress={bench.close}>
            Put it away
          </Button>
        )}
      </div>
      {work && <JobProgress says={work.says} part={work.part} onCancel={bench.cancel} />}
      {recording?.answer && (
        <div className="beside">
          <div className="pictures">
            <RunView recording={recording} hearing={hearing} options={options} />
            {run && <Events hearing={run.inputs.hearing} heard={run.answer} />}
          </div>
          <ToldPanel told={told} sync={expected.sync} onAgain={() => void bench.again(options)} />
        </div>
      )}
      <FindingsList findings={findings} />
      {run && expected.says && (
        <section className="besidemodel">
          <h2>Beside the model</h2>
          <p>
            <Says says={expected.says} />
          </p>
          {expected.prediction && <Beside run={run.inputs} />}
        </section>
      )}
      <Live options={options} expected={balance && 60 * balance.tiedUpRotation.value} onRecorded={open} />
      <Cautions says={soundTrade.cautions ?? []} />
      {run && <Numbers hearing={run.inputs.hearing} heard={run.answer} />}
      <KeptRuns options={options} />
      <ChangeLog craft={craft} />
      <SourcesFoot how={soundTrade.method ?? []} sources={all.flatMap((f) => f.sources)} />
    </>
  )
}
