import { useCallback, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Sheet } from '../../../../drawing/sheet.ts'
import { svgOf } from '../../../../drawing/svg.ts'
import { markStretch, stretchAround } from '../../../../trades/sound/byHand.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import type { LockedPoint } from '../../../../trades/sound/listener.ts'
import { rpmPerHertz } from '../../../../trades/sound/relations.ts'
import { runPicture } from '../../../../trades/sound/soundFigures.ts'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { saveFile } from '../../state/openedFiles.ts'
import { bench, type Recording, type Settings, useBench } from './bench.ts'
import { HandLayer } from './HandLayer.tsx'
import { PlayBar } from './PlayBar.tsx'
import { player } from './player.ts'
import { SpanBar } from './SpanBar.tsx'
import type { Span } from './span.ts'

interface Props {
  recording: Recording
  /** what was heard, as it is to be shown; absent while it is listened to */
  hearing: Hearing | undefined
  options: Settings
}

/** The recording with the tracks on it: played, read, and lines dragged where they are wrong. */
export function RunView({ recording, hearing, options }: Props) {
  const { told } = useBench()
  const [sheet, setSheet] = useState<Sheet>()
  const answer = recording.answer!
  const perHertz = rpmPerHertz(options.cylinders, options.strokes)
  // another recording, or one that has got longer, is shown whole
  const duration = hearing?.duration ?? answer.spectrogram.columns * answer.spectrogram.timeStep
  const whole = useMemo(() => ({ from: 0, to: duration }), [duration])
  const [part, setPart] = useState<{ of: Span; span: Span }>()
  const span = part?.of === whole ? part.span : whole
  const onSpan = useCallback(
    (change: (span: Span) => Span) =>
      setPart((p) => {
        const now = p?.of === whole ? p.span : whole
        const next = change(now)
        return next === now ? p : { of: whole, span: next }
      }),
    [whole],
  )
  const draw = useCallback(
    (width: number) =>
      runPicture({
        width,
        spectrogram: answer.spectrogram,
        rpmPerHertz: perHertz,
        ...(hearing ? { hearing } : {}),
        ...span,
      }),
    [answer, hearing, perHertz, span],
  )
  const octave = (kind: 'twice' | 'half', label: 'A' | 'B', time: number) => {
    const around = hearing && stretchAround(hearing, label, time)
    const mark = around && markStretch(hearing, kind, label, around.from, around.to)
    if (!mark) return
    bench.tell({ marks: [...told.marks, mark] })
    void bench.again(options)
  }
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
              marks={told.marks}
              onLocks={setLocks}
              onOctave={octave}
              onSeek={player.seek}
            />
          )}
        </div>
        <figcaption>
          <span>
            Dark is loud. A line of an engine that fires once a turn stands at its speed; fainter lines at
            twice and three times that are the same engine’s.{' '}
            {hearing &&
              'Drag a line where it is wrong; let go at twice or half its speed and the whole stretch moves. Tap to jump there.'}
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
      {hearing && <SpanBar span={span} duration={duration} onSpan={onSpan} />}
      <PlayBar recording={recording} options={options} />
    </section>
  )
}
