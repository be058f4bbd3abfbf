import { useCallback, useMemo } from 'react'
import { runAnswer, runPicture } from '../../../sound/figures.ts'
import { runFindings } from '../../../sound/findings.ts'
import { hearOptionsOf } from '../../../sound/fromCraft.ts'
import { rpmPerHertz } from '../../../sound/listener.ts'
import { AnswerHeader } from '../../parts/AnswerHeader.tsx'
import { Cautions } from '../../parts/Cautions.tsx'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { FindingsList } from '../../parts/FindingsList.tsx'
import { JobProgress } from '../../parts/JobProgress.tsx'
import { SourcesFoot } from '../../parts/SourcesFoot.tsx'
import { useApp } from '../../state/hooks.ts'
import { bench, useBench } from './bench.ts'
import { OpenRecording } from './OpenRecording.tsx'
import { cautions, how } from './words.ts'

const asks = 'What happened, and what next?'

/** What happened? A recording read to engine speeds and events. */
export function RunsPage() {
  const craft = useApp((s) => s.craft)
  const { recording, work, fault } = useBench()
  const options = useMemo(() => (craft ? hearOptionsOf(craft) : {}), [craft])
  const open = useCallback((file: File) => void bench.open(file, options), [options])
  const answer = recording?.answer
  const hearing = answer?.hearing
  const draw = useCallback(
    (width: number) =>
      runPicture({
        width,
        spectrogram: hearing?.spectrogram ?? answer!.spectrogram,
        rpmPerHertz: rpmPerHertz(options.cylinders, options.strokes),
        ...(hearing ? { hearing } : {}),
      }),
    [answer, hearing, options],
  )
  const says = hearing && runAnswer(hearing)
  return (
    <>
      {says ? (
        <AnswerHeader asks={asks} says={says.says} range={says.range} confidence={says.confidence} />
      ) : (
        <EmptyState
          title={recording ? `Listening to ${recording.name}` : 'No run yet'}
          says="Film or record a run with a phone, 3 to 10 m away and out of the wind, and open it here. Nothing leaves this machine."
        />
      )}
      {fault && (
        <p role="alert">
          {fault.name}: {fault.says.join(' ')}
        </p>
      )}
      <div className="row">
        <OpenRecording main={!recording} onFile={open} />
      </div>
      {work && <JobProgress says={work.says} part={work.part} onCancel={bench.cancel} />}
      {answer && <Figure draw={draw} name="run" caption="Dark: loud. The lines are the engines." />}
      {hearing && <FindingsList findings={runFindings(hearing)} />}
      <Cautions says={cautions} />
      <SourcesFoot how={how} sources={[]} />
    </>
  )
}
