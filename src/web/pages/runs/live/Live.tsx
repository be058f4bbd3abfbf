import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../sound/answer.ts'
import { engineColour } from '../../../../sound/figures.ts'
import type { LivePoint } from '../../../../sound/listener.ts'
import { writeWav } from '../../../../sound/wav.ts'
import type { Settings } from '../bench.ts'
import type { LiveOrder } from './listener.worker.ts'
import { type Microphone, openMicrophone, refusal } from './microphone.ts'

interface Props {
  options: Settings
  /** predicted speed tied up, rev/min */
  expected: number | undefined
  onRecorded: (file: File) => void
}

type Shown = LivePoint & { level: number }

interface Session {
  microphone: Microphone
  worker: Worker
  /** stretches kept while recording */
  kept: Float32Array[] | undefined
}

/** s of recording at most: what fits in a phone's memory */
const MOST = 1800
/** confidence below which a speed is not shown */
const SHOWN = 0.35

/** The microphone as a tachometer for one or two engines, with a recording button. */
export function Live({ options, expected, onRecorded }: Props) {
  const [point, setPoint] = useState<Shown>()
  const [on, setOn] = useState<'off' | 'opening' | 'on'>('off')
  const [recorded, setRecorded] = useState<number>()
  const [fault, setFault] = useState('')
  const session = useRef<Session>(undefined)

  const stop = () => {
    session.current?.microphone.close()
    session.current?.worker.terminate()
    session.current = undefined
    setOn('off')
    setPoint(undefined)
    setRecorded(undefined)
  }
  useEffect(
    () => () => {
      session.current?.microphone.close()
      session.current?.worker.terminate()
    },
    [],
  )
  const start = async () => {
    setFault('')
    setOn('opening')
    try {
      const worker = new Worker(new URL('./listener.worker.ts', import.meta.url), { type: 'module' })
      worker.onmessage = ({ data }: MessageEvent<Shown>) => setPoint(data)
      const send = (order: LiveOrder) => worker.postMessage(order)
      let rate = 0
      const microphone = await openMicrophone((samples) => {
        const kept = session.current?.kept
        if (kept) {
          kept.push(samples.slice())
          const seconds = kept.reduce((n, p) => n + p.length, 0) / rate
          if (seconds < MOST) setRecorded(seconds)
          else finish()
        }
        send({ samples })
      })
      rate = microphone.rate
      send({ rate, options })
      session.current = { microphone, worker, kept: undefined }
      setOn('on')
    } catch (error) {
      setFault(refusal(error))
      setOn('off')
    }
  }
  const record = () => {
    if (!session.current) return
    session.current.kept = []
    setRecorded(0)
  }
  const finish = () => {
    const kept = session.current?.kept
    const rate = session.current?.microphone.rate
    stop()
    if (!kept?.length || !rate) return
    const sound = new Float32Array(kept.reduce((n, p) => n + p.length, 0))
    let at = 0
    for (const p of kept) {
      sound.set(p, at)
      at += p.length
    }
    const bytes = writeWav([sound], rate) as Uint8Array<ArrayBuffer>
    onRecorded(new File([bytes], `run ${timeName(new Date())}.wav`, { type: 'audio/wav' }))
  }
  return (
    <section className="live">
      <h2>Tachometer</h2>
      <p>
        Holds the phone’s microphone to the engines and shows their speed as it is. The sound stays on this
        device.
      </p>
      <div className="row">
        {on === 'off' ? (
          <Button onPress={() => void start()}>Start listening</Button>
        ) : (
          <>
            <Button onPress={stop}>Stop listening</Button>
            {recorded === undefined ? (
              <Button className="main" isDisabled={on !== 'on'} onPress={record}>
                Record
              </Button>
            ) : (
              <Button className="main" onPress={finish}>
                Stop recording and read it
              </Button>
            )}
          </>
        )}
        <span role="status">
          {on === 'opening' && 'Waiting for the microphone…'}
          {fault}
        </span>
        {recorded !== undefined && <span className="recording">Recording {clockText(recorded)}</span>}
      </div>
      {on === 'on' && <Dials point={point} expected={expected} />}
    </section>
  )
}

interface DialsProps {
  point: Shown | undefined
  expected: number | undefined
}

function Dials({ point, expected }: DialsProps) {
  const engines = (point?.engines ?? []).filter((e) => e.confidence > SHOWN)
  const top = Math.max(9000, ...(expected ? [1.4 * expected] : []), ...engines.map((e) => e.rpm * 1.05))
  return (
    <div className="dials">
      {(['A', 'B'] as const).map((label) => {
        const engine = engines.find((e) => e.label === label)
        const rpm = engine ? Math.round(engine.rpm / 10) * 10 : undefined
        return (
          // biome-ignore lint/a11y/useSemanticElements: the browser's own meter cannot hold a large number
          <div
            key={label}
            className="dial"
            role="meter"
            aria-label={`Speed of engine ${label}`}
            aria-valuemin={0}
            aria-valuemax={Math.round(top)}
            aria-valuenow={rpm ?? 0}
            aria-valuetext={rpm === undefined ? 'not heard' : `${rpm} rpm`}
          >
            <span className="quiet">Engine {label}</span>
            <span className="big">{rpm ?? '–'}</span>
            <span className="quiet">{engine ? 'rpm' : 'not heard'}</span>
            <svg viewBox="0 0 100 9" preserveAspectRatio="none" aria-hidden="true">
              <rect x={0} y={3} width={100} height={4} fill="#e6e2d6" />
              {rpm !== undefined && (
                <rect x={0} y={3} width={(100 * rpm) / top} height={4} fill={engineColour[label]} />
              )}
              {expected && (
                <rect x={(100 * expected) / top - 0.3} y={0} width={0.6} height={9} fill="#1b1a17" />
              )}
            </svg>
          </div>
        )
      })}
      <p className="quiet">
        {point && point.level < 1e-4 ? 'The microphone gives no sound. ' : ''}
        {expected ? `The mark is the predicted speed tied up, ${Math.round(expected / 10) * 10} rpm. ` : ''}
        Readings look back a few seconds and settle in about half a second.
      </p>
    </div>
  )
}

/** "2026-11-25 14.05" */
function timeName(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0')
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())} ${two(now.getHours())}.${two(now.getMinutes())}.${two(now.getSeconds())}`
}
