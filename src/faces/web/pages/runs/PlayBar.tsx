import { useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../base/answers/clockText.ts'
import { enginesHeard } from '../../../../trades/sound/heardAnswer.ts'
import { bench, type Recording, type Settings } from './bench.ts'
import { player, useQuietOnLeave, type Voice } from './player.ts'

/** Play, pause, where the cursor stands, and which sound is heard. */
export function PlayBar({ recording, options }: { recording: Recording; options: Settings }) {
  const { time, playing, voice, fault } = player.use()
  const [busy, setBusy] = useState<Voice>()
  useQuietOnLeave()
  useEffect(() => {
    if (recording.audio) player.load('all', recording.audio)
    return player.close
  }, [recording.audio])
  const { audio } = recording
  const hearing = recording.answer?.hearing
  const engines = useMemo(() => (hearing ? enginesHeard(hearing) : []), [hearing])
  if (!audio)
    return (
      <p className="quiet">The sound of this run is not kept here; open the recording again to play it.</p>
    )
  const choose = async (next: Voice) => {
    if (next === 'all') return player.load('all', audio)
    const track = hearing?.tracks.find((t) => t.label === next)
    if (!track) return
    setBusy(next)
    try {
      const sound = await bench.alone(track, options)
      if (sound) player.load(next, sound)
    } catch (error) {
      if ((error as Error).name !== 'AbortError') player.fail((error as Error).message)
    } finally {
      setBusy(undefined)
    }
  }
  return (
    <div className="playbar">
      <Button className="main" onPress={player.toggle}>
        {playing ? 'Pause' : 'Play'}
      </Button>
      <input
        type="range"
        aria-label="Moment of the recording"
        aria-valuetext={clockText(time)}
        min={0}
        max={recording.seconds}
        step={0.1}
        value={Math.min(time, recording.seconds)}
        onChange={(e) => player.seek(Number(e.target.value))}
      />
      <span className="clock">
        {clockText(time)} of {clockText(recording.seconds)}
      </span>
      {engines.length > 0 && (
        <fieldset className="switch">
          <legend className="hush">What to listen to</legend>
          {(['all', ...engines.map((e) => e.label)] as Voice[]).map((v) => (
            <Button
              key={v}
              aria-pressed={voice === v}
              isDisabled={busy !== undefined}
              onPress={() => void choose(v)}
            >
              {v === 'all' ? 'Everything' : engines.length > 1 ? `Engine ${v} alone` : 'Engine alone'}
            </Button>
          ))}
        </fieldset>
      )}
      <span className="quiet" role="status">
        {busy ? 'Picking out its lines…' : fault}
      </span>
    </div>
  )
}
