import { useEffect, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../sound/answer.ts'
import { ANALYSIS_RATE, resampled } from '../../../sound/resample.ts'
import { writeWav } from '../../../sound/wav.ts'
import { callJob } from '../../work/call.ts'
import type { Recording } from './bench.ts'
import { player, useQuietOnLeave, type Voice } from './player.ts'

/** samples a second at which one engine alone is played; every browser takes it */
const PLAY_RATE = 16000

/** Play, pause, where the cursor stands, and which sound is heard. */
export function PlayBar({ recording }: { recording: Recording }) {
  const { time, playing, voice, fault } = player.use()
  const [busy, setBusy] = useState<Voice>()
  useQuietOnLeave()
  useEffect(() => {
    if (recording.audio) player.load('all', recording.audio)
    return player.close
  }, [recording.audio])
  const { audio } = recording
  if (!audio) return <p className="quiet">This run was kept without its sound.</p>
  const answer = recording.answer
  const tracks = answer?.hearing?.tracks ?? []
  const choose = async (next: Voice) => {
    if (next === 'all') return player.load('all', audio)
    const track = tracks.find((t) => t.label === next)
    if (!track || !answer?.hearing) return
    setBusy(next)
    try {
      const { firing, change, rpm } = track
      const order = { sound: answer.sound, track: { firing, change, rpm }, step: answer.hearing.step }
      const alone = await callJob('alone', order).done
      const wav = writeWav([louder(resampled(alone, ANALYSIS_RATE, PLAY_RATE))], PLAY_RATE)
      player.load(next, new Blob([wav as Uint8Array<ArrayBuffer>], { type: 'audio/wav' }))
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
      {tracks.length > 0 && (
        <fieldset className="switch">
          <legend className="hush">What to listen to</legend>
          {(['all', ...tracks.map((t) => t.label)] as Voice[]).map((v) => (
            <Button
              key={v}
              aria-pressed={voice === v}
              isDisabled={busy !== undefined}
              onPress={() => void choose(v)}
            >
              {v === 'all' ? 'Everything' : tracks.length > 1 ? `Engine ${v} alone` : 'Engine alone'}
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

/** The strongest sample at nine tenths. */
function louder(x: Float32Array): Float32Array {
  const most = x.reduce((a, v) => Math.max(a, Math.abs(v)), 0)
  return most > 0 ? x.map((v) => (0.9 * v) / most) : x
}
