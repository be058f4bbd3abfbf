import { useCallback, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Sheet } from '../../../drawing/sheet.ts'
import { svgOf } from '../../../drawing/svg.ts'
import { runPicture } from '../../../sound/figures.ts'
import type { LockedPoint } from '../../../sound/listener.ts'
import { rpmPerHertz } from '../../../sound/listener.ts'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { saveFile } from '../../state/files.ts'
import { bench, type Recording, type Settings, useBench } from './bench.ts'
import { HandLayer } from './HandLayer.tsx'
import { Locks } from './Locks.tsx'
import { PlayBar } from './PlayBar.tsx'
import { player } from './player.ts'

interface Props {
  recording: Recording
  options: Settings
}

/** The recording with the tracks on it: played, read, and put right by hand. */
export function RunView({ recording, options }: Props) {
  const { told, work } = useBench()
  const [sheet, setSheet] = useState<Sheet>()
  const answer = recording.answer!
  const { hearing } = answer
  const perHertz = rpmPerHertz(options.cylinders, options.strokes)
  const draw = useCallback(
    (width: number) =>
      runPicture({
        width,
        spectrogram: answer.hearing?.spectrogram ?? answer.spectrogram,
        rpmPerHertz: perHertz,
        ...(answer.hearing ? { hearing: answer.hearing } : {}),
      }),
    [answer, perHertz],
  )
  const setLocks = (locks: readonly LockedPoint[]) => bench.tell({ locks })
  return (
    <section className="runview" aria-label="The recording">
      <figure className="figure">
        <div className="stack">
          <SheetSvg draw={draw} onShow={setSheet} />
          {sheet?.plots?.[0] && (
            <HandLayer
              sheet={sheet}
              hearing={hearing}
              locks={told.locks}
              onLocks={setLocks}
              onSeek={player.seek}
            />
          )}
        </div>
        <figcaption>
          <span>
            Dark is loud. A line of an engine that fires once a turn stands at its speed; fainter lines at
            twice and three times that are the same engine’s.{' '}
            {hearing && 'Drag a line where it is wrong; tap to jump there.'}
          </span>
          <Button
            className="plain"
            aria-label="Save picture run"
            onPress={() => sheet && void saveFile('run.svg', svgOf(sheet))}
          >
            Save picture
          </Button>
        </figcaption>
      </figure>
      <PlayBar recording={recording} />
      {hearing && answer.sound.length > 0 && (
        <Locks
          hearing={hearing}
          locks={told.locks}
          busy={work !== undefined}
          onLocks={setLocks}
          onAgain={() => bench.again(options)}
        />
      )}
    </section>
  )
}
