import { useCallback, useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../../base/answers/clockText.ts'
import { app } from '../../../state/app.ts'
import type { Settings } from '../bench.ts'
import { Dials, type Shown } from './Dials.tsx'
import { type Held, lasting } from './hold.ts'
import type { LiveOrder } from './listener.worker.ts'
import { type Microphone, openMicrophone, refusal } from './microphone.ts'
import { type Broken, brokenOff, type Recorder, startRecorder } from './recorder.ts'

interface Props {
  options: Settings
  /** predicted speed tied up, rev/min */
  expected: number | undefined
  onRecorded: (file: File) => void
}

interface Session {
  microphone: Microphone
  worker: Worker
  recorder: Recorder | undefined
  /** keeps the screen, and with it the microphone, from going to sleep */
  awake: WakeLockSentinel | undefined
}

/** s of recording at most: on the browser's disk, and where it has none in memory */
const MOST = { lasting: 7200, inMemory: 1800 }

/** The microphone as a tachometer for one or two engines, with a recording button. */
export function Live({ options, expected, onRecorded }: Props) {
  const [point, setPoint] = useState<Shown>()
  const [on, setOn] = useState<'off' | 'opening' | 'on'>('off')
  const [recorded, setRecorded] = useState<number>()
  const [says, setSays] = useState('')
  const session = useRef<Session>(undefined)
  /** counts on when listening is ended: a microphone that opens only after that is closed again */
  const turn = useRef(0)

  const stop = useCallback(() => {
    turn.current++
    session.current?.microphone.close()
    session.current?.worker.terminate()
    void session.current?.awake?.release()
    session.current = undefined
    setOn('off')
    setPoint(undefined)
    setRecorded(undefined)
  }, [])
  const finish = useCallback(async () => {
    const recorder = session.current?.recorder
    stop()
    if (!recorder) return
    try {
      onRecorded(await recorder.finish())
    } catch (error) {
      setSays(`The recording could not be put together: ${(error as Error).message}.`)
    }
  }, [stop, onRecorded])
  // leaving the page ends a recording as its button does
  const leave = useRef(finish)
  leave.current = finish
  useEffect(() => () => void leave.current(), [])

  const section = useRef<HTMLElement>(null)
  // whoever holds a phone to an engine has no hand left to scroll with
  useEffect(() => {
    if (on === 'on') section.current?.scrollIntoView({ block: 'start' })
  }, [on])

  const start = async () => {
    const mine = ++turn.current
    setSays('')
    setOn('opening')
    const worker = new Worker(new URL('./listener.worker.ts', import.meta.url), { type: 'module' })
    const held: Held = {}
    worker.onmessage = ({ data }: MessageEvent<Shown>) => setPoint(lasting(held, data))
    const send = (order: LiveOrder, transfer: Transferable[] = []) => worker.postMessage(order, transfer)
    try {
      const microphone = await openMicrophone({
        take(samples) {
          const recorder = session.current?.recorder
          if (recorder) {
            recorder.take(samples)
            setRecorded(Math.floor(recorder.seconds))
            if (recorder.seconds > (recorder.lasting ? MOST.lasting : MOST.inMemory)) void leave.current()
          }
          send({ samples }, [samples.buffer])
        },
        lost() {
          const kept = session.current?.recorder !== undefined
          void leave.current()
          // what was recorded goes onto the bench, and the tachometer into a fold: it is said at the head of the page
          app.say(
            `The microphone is gone: it was unplugged, or the system took it away.${kept ? ' What was recorded until then is being read.' : ''}`,
          )
        },
        muted: (muted) =>
          setSays(
            muted ? 'The system keeps the microphone silent just now, during a call for instance.' : '',
          ),
      })
      if (mine !== turn.current) {
        microphone.close()
        worker.terminate()
        return
      }
      send({ rate: microphone.rate, options })
      session.current = { microphone, worker, recorder: undefined, awake: undefined }
      setOn('on')
    } catch (error) {
      worker.terminate()
      if (mine !== turn.current) return
      setSays(refusal(error))
      setOn('off')
    }
  }
  const record = async () => {
    const now = session.current
    if (!now || recorded !== undefined) return
    setRecorded(0)
    const recorder = await startRecorder(now.microphone.rate, new Date())
    // listening was ended while the disk was asked
    if (session.current !== now) return void recorder.finish().catch(() => {})
    now.recorder = recorder
    now.awake = await navigator.wakeLock?.request('screen').catch(() => undefined)
  }
  return (
    <section className="live" ref={section}>
      <h2>Tachometer</h2>
      {on === 'on' ? (
        <Dials point={point} engines={options.engines === 1 ? 1 : 2} expected={expected} />
      ) : (
        <p>
          Holds the phone’s microphone to the engines and shows their speed as it is. The sound stays on this
          device.
        </p>
      )}
      <div className="row">
        {on === 'off' ? (
          <Button onPress={() => void start()}>Start listening</Button>
        ) : (
          <>
            <Button onPress={() => void finish()}>Stop listening</Button>
            {recorded === undefined ? (
              <Button className="main" isDisabled={on !== 'on'} onPress={() => void record()}>
                Record
              </Button>
            ) : (
              <Button className="main" onPress={() => void finish()}>
                Stop recording and read it
              </Button>
            )}
          </>
        )}
        <span role="status">
          {on === 'opening' && 'Waiting for the microphone…'}
          {says}
        </span>
        {recorded !== undefined && <span className="recording">Recording {clockText(recorded)}</span>}
      </div>
      <BrokenOff busy={on !== 'off'} onRead={onRecorded} />
    </section>
  )
}

interface BrokenProps {
  busy: boolean
  onRead: (file: File) => void
}

/** Recordings that a reload, a crash or an empty battery broke off: read or dropped. */
function BrokenOff({ busy, onRead }: BrokenProps) {
  const [list, setList] = useState<readonly Broken[]>([])
  useEffect(() => {
    if (!busy) void brokenOff().then(setList)
  }, [busy])
  const gone = (b: Broken) => setList((l) => l.filter((o) => o !== b))
  const read = async (b: Broken) => {
    const file = await b.file()
    await b.drop()
    gone(b)
    onRead(file)
  }
  if (busy || list.length === 0) return null
  return (
    <ul className="plainlist brokenoff">
      {list.map((b) => (
        <li className="row" key={b.began.getTime()}>
          <span>
            A recording of {clockText(b.seconds)} begun {b.began.toLocaleString('en-GB')} was broken off.
          </span>
          <Button onPress={() => void read(b)}>Read it</Button>
          <Button className="plain" onPress={() => void b.drop().then(() => gone(b))}>
            Drop it
          </Button>
        </li>
      ))}
    </ul>
  )
}
