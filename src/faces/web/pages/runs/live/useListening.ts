import { useCallback, useEffect, useRef, useState } from 'react'
import { app } from '../../../state/app.ts'
import type { Settings } from '../bench.ts'
import type { Shown } from './Dials.tsx'
import { type Held, lasting } from './hold.ts'
import type { LiveOrder } from './listener.worker.ts'
import { type Microphone, openMicrophone, refusal, tapAddress } from './microphone.ts'
import { type Recorder, startRecorder } from './recorder.ts'

interface Session {
  microphone: Microphone
  worker: Worker
  recorder: Recorder | undefined
  /** keeps the screen, and with it the microphone, from going to sleep */
  awake: WakeLockSentinel | undefined
}

export interface Listening {
  on: 'off' | 'opening' | 'on'
  /** engine speeds as they are, those that have lasted */
  point: Shown | undefined
  /** s recorded so far; undefined while nothing is recorded */
  recorded: number | undefined
  /** what is wrong, '' when nothing is */
  says: string
  start: () => Promise<void>
  record: () => Promise<void>
  /** ends listening, and hands over what was recorded */
  finish: () => Promise<void>
}

/** s of recording at most: on the browser's disk, and where it has none in memory */
const MOST = { lasting: 7200, inMemory: 1800 }

const newListener = () => new Worker(new URL('./listener.worker.ts', import.meta.url), { type: 'module' })

/**
 * The microphone as a tachometer, with a recorder beside it. Leaving the page ends a recording as its button does. With `ahead` all
 * that listening needs is fetched at once, so that it begins where there is no network any more.
 */
export function useListening(options: Settings, onRecorded: (file: File) => void, ahead = false): Listening {
  /** one that was fetched ahead and waits to be used */
  const waiting = useRef<Worker>(undefined)
  useEffect(() => {
    if (!ahead) return
    waiting.current = newListener()
    void fetch(tapAddress).catch(() => {})
    return () => waiting.current?.terminate()
  }, [ahead])
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
  const leave = useRef(finish)
  leave.current = finish
  useEffect(() => () => void leave.current(), [])

  const start = async () => {
    const mine = ++turn.current
    setSays('')
    setOn('opening')
    const worker = waiting.current ?? newListener()
    waiting.current = undefined
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
  return { on, point, recorded, says, start, record, finish }
}
