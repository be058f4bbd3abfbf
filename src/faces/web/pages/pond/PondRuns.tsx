import { useCallback, useMemo } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { app } from '../../state/app.ts'
import { useApp } from '../../state/hooks.ts'
import { handFile } from '../../state/openedFiles.ts'
import { keepRun, keptRun, type RunLine } from '../../state/runs.ts'
import type { Recording } from '../runs/bench.ts'
import { type KeptRun, useKeptRuns } from '../runs/KeptRuns.tsx'
import { KEPT_RATE } from '../runs/live/recorder.ts'
import { nothingTold } from '../runs/told.ts'

/** bytes before the samples of a WAV file, and of one sample */
const [HEAD, SAMPLE] = [44, 2]

export interface PondRunsKept {
  lines: readonly RunLine[]
  /** keeps a recording with the pull read, in kg as typed */
  keep: (file: File, readings: string) => Promise<void>
}

/** The recordings made at the pond: kept as runs of the craft that is open, to be listened to on the page Runs. */
export function usePondRuns(): PondRunsKept {
  const craftId = useApp((s) => s.work?.id)
  const { runs, load } = useKeptRuns()
  const keep = useCallback(
    async (file: File, readings: string) => {
      if (!craftId) return void handFile(file)
      const id = crypto.randomUUID()
      const seconds = Math.max(0, file.size - HEAD) / SAMPLE / KEPT_RATE
      const recording: Recording = {
        id,
        name: file.name,
        audio: file,
        invented: false,
        flags: [],
        seconds,
        answer: undefined,
      }
      const told = { ...nothingTold, readings, ...(readings === '' ? {} : { kind: 'tied up' as const }) }
      const says = `Recorded at the pond, not listened to yet.${readings === '' ? '' : ` Pull read: ${readings}${/[a-z]/i.test(readings) ? '' : ' kg'}.`}`
      const whole: KeptRun = { recording, told }
      try {
        await keepRun(craftId, { id, name: file.name, kept: Date.now(), seconds, says, sound: true }, whole)
        app.say(`${file.name} is kept on this phone.`)
        load()
      } catch (error) {
        app.say(`It could not be kept here (${(error as Error).message}); save it as a file.`)
        void handFile(file)
      }
    },
    [craftId, load],
  )
  return useMemo(() => ({ lines: runs, keep }), [runs, keep])
}

/** The recordings, each to be handed over as a file: that is how they come to the computer. */
export function PondRuns({ runs }: { runs: PondRunsKept }) {
  if (runs.lines.length === 0) return null
  const hand = async (line: RunLine) => {
    const whole = await keptRun<KeptRun>(line.id)
    const audio = whole?.recording.audio
    if (!audio) return app.say(`${line.name} was kept without its sound.`)
    await handFile(new File([audio], line.name, { type: 'audio/wav' }))
  }
  return (
    <section className="pondruns">
      <h2>Recorded here</h2>
      <ul className="plainlist">
        {runs.lines.map((line) => (
          <li key={line.id} className="row">
            <span>
              {line.name}, {clockText(line.seconds)}
            </span>
            <Button
              isDisabled={!line.sound}
              aria-label={`Send as a file: ${line.name}`}
              onPress={() => void hand(line)}
            >
              Send as a file
            </Button>
            <a href="#/runs">Read it on Runs</a>
          </li>
        ))}
      </ul>
    </section>
  )
}
