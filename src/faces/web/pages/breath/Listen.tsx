import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { CycleTrace } from '../../../../trades/engine/trace.ts'
import { exhaustNote } from '../../../../whole/breath/note.ts'

interface Props {
  trace: CycleTrace
  tried: CycleTrace | undefined
  cylinders: number
}

const seconds = 3
/** part of full scale: quiet until the listener turns it up */
const gentle = 0.25

/** Plays the note that the outlet would make at this speed, as computed. */
export function Listen({ trace, tried, cylinders }: Props) {
  const [playing, setPlaying] = useState('')
  const [fault, setFault] = useState('')
  const sound = useRef<{ context: AudioContext; node?: AudioBufferSourceNode }>(undefined)
  const stop = () => {
    sound.current?.node?.stop()
    setPlaying('')
  }
  useEffect(
    () => () => {
      sound.current?.node?.stop()
      void sound.current?.context.close()
      sound.current = undefined
    },
    [],
  )
  const play = (which: string, t: CycleTrace) => {
    try {
      sound.current ??= { context: new AudioContext() }
      const { context, node } = sound.current
      node?.stop()
      void context.resume()
      const samples = exhaustNote({
        flow: t.outFlow,
        rpm: t.rpm,
        cylinders,
        rate: context.sampleRate,
        seconds,
      })
      const buffer = context.createBuffer(1, samples.length, context.sampleRate)
      buffer.copyToChannel(samples, 0)
      const source = context.createBufferSource()
      source.buffer = buffer
      const gain = context.createGain()
      gain.gain.value = gentle
      source.connect(gain).connect(context.destination)
      source.onended = () => sound.current?.node === source && setPlaying('')
      source.start()
      sound.current.node = source
      setPlaying(which)
      setFault('')
    } catch (error) {
      setFault(`No sound: ${(error as Error).message}`)
    }
  }
  return (
    <section className="block listen">
      <h2>Listen</h2>
      <p>
        The note at {trace.rpm} rpm from the computed flow out of the last tube, at full throttle. Turn the
        volume down first: it starts quiet, but speakers differ. Its loudness says nothing; its sharpness and
        pitch do.
      </p>
      <div className="row">
        {playing === 'now' ? (
          <Button onPress={stop}>Stop</Button>
        ) : (
          <Button onPress={() => play('now', trace)}>Play the note</Button>
        )}
        {tried &&
          (playing === 'tried' ? (
            <Button onPress={stop}>Stop</Button>
          ) : (
            <Button onPress={() => play('tried', tried)}>Play it with what is tried</Button>
          ))}
        <span role="status" className="quiet">
          {fault || (playing && 'Playing…')}
        </span>
      </div>
    </section>
  )
}
