import { useEffect, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { clockText } from '../../../../../base/answers/clockText.ts'
import type { Settings } from '../bench.ts'
import { Dials } from './Dials.tsx'
import { type Broken, brokenOff } from './recorder.ts'
import { useListening } from './useListening.ts'

interface Props {
  options: Settings
  /** predicted speed tied up, rev/min */
  expected: number | undefined
  onRecorded: (file: File) => void
}

/** The microphone as a tachometer for one or two engines, with a recording button. */
export function Live({ options, expected, onRecorded }: Props) {
  const { on, point, recorded, says, start, record, finish } = useListening(options, onRecorded)
  const section = useRef<HTMLElement>(null)
  // whoever holds a phone to an engine has no hand left to scroll with
  useEffect(() => {
    if (on === 'on') section.current?.scrollIntoView({ block: 'start' })
  }, [on])

  return (
    <section className="live" ref={section}>
      <h2>Tachometer</h2>
      {on === 'on' ? (
        <Dials point={point} engines={options.engines === 1 ? 1 : 2} expected={expected} />
      ) : (
        <p>
          Holds the phone’s microphone to the engines and shows their speed as it is. The sound stays on this
          device. <a href="#/pond">Larger, for the phone at the water</a>
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
