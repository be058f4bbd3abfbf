import { useCallback, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { printed } from '../../../../base/answers/sentence.ts'
import { runAnswer } from '../../../../trades/sound/heardAnswer.ts'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { forgetRun, keepRun, keptRun, listRuns, type RunLine } from '../../state/runs.ts'
import { bench, type Recording, type Settings, useBench } from './bench.ts'
import type { Told } from './told.ts'

/** what is put on the shelf for one run */
export interface KeptRun {
  recording: Recording
  told: Told
}

export interface Kept {
  runs: readonly RunLine[]
  /** asks for the list again */
  load: () => void
}

/** The kept runs of the craft on the bench. */
export function useKeptRuns(): Kept {
  const craftId = useApp((s) => s.work?.id)
  const [runs, setRuns] = useState<readonly RunLine[]>([])
  const load = useCallback(() => {
    if (craftId) void listRuns(craftId).then(setRuns)
  }, [craftId])
  useEffect(load, [load])
  return useMemo(() => ({ runs, load }), [runs, load])
}

/** Keeps the run on the bench in this browser, with or without its sound, and takes earlier ones up again. */
export function KeptRuns({ options, kept: { runs, load } }: { options: Settings; kept: Kept }) {
  const craftId = useApp((s) => s.work?.id)
  const { recording, told, work } = useBench()
  const [withSound, setWithSound] = useState(true)
  if (!craftId) return null
  const hearing = recording?.answer?.hearing
  const keep = async () => {
    if (!recording?.answer || !hearing) return
    // a kept line is a text; speeds are in rev/min in every system of units
    const says = printed(runAnswer(hearing).says)
    const { id, name, seconds } = recording
    const sound = withSound && recording.audio !== undefined
    const silent: Recording = { ...recording, audio: undefined }
    try {
      const whole: KeptRun = { recording: sound ? recording : silent, told }
      await keepRun(craftId, { id, name, kept: Date.now(), seconds, says, sound }, whole)
      app.say(`${name} is kept in this browser.`)
      load()
    } catch (error) {
      app.say(`${name} could not be kept (${(error as Error).message}). Try without its sound.`)
    }
  }
  const take = async (line: RunLine) => {
    const whole = await keptRun<KeptRun>(line.id)
    if (whole) bench.takeUp(whole.recording, whole.told, options)
    else app.say(`${line.name} is no longer kept here.`)
  }
  return (
    <section className="keptruns">
      {hearing && (
        <div className="row">
          <Button isDisabled={work !== undefined} onPress={() => void keep()}>
            Keep this run
          </Button>
          <label>
            <input
              type="checkbox"
              checked={withSound}
              disabled={!recording?.audio}
              onChange={(e) => setWithSound(e.target.checked)}
            />{' '}
            with its sound
          </label>
        </div>
      )}
      {runs.length === 0 ? (
        <p className="quiet">None kept yet. Kept runs stay in this browser and never leave it.</p>
      ) : (
        <ul className="plainlist">
          {runs.map((line) => (
            <li key={line.id}>
              <div>
                <strong>{line.name}</strong>{' '}
                <span className="quiet">
                  {new Date(line.kept).toLocaleDateString('en-GB')}, {clockText(line.seconds)}
                  {!line.sound && ', without its sound'}
                </span>
                <p>{line.says}</p>
              </div>
              <div className="row">
                <Button aria-label={`Open ${line.name}`} onPress={() => void take(line)}>
                  Open
                </Button>
                <Button
                  className="plain"
                  aria-label={`Forget ${line.name}`}
                  onPress={() => void forgetRun(craftId, line.id).then(load)}
                >
                  Forget
                </Button>
              </div>
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
