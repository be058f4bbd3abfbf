import { useCallback, useEffect, useMemo, useRef, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { inRpm, inScaleKg, ranged } from '../../../../base/answers/amounts.ts'
import { clockText } from '../../../../base/answers/clockText.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { inPounds, readingsFault } from '../../../../trades/sound/pull.ts'
import { hearOptionsOf } from '../../../../trades/sound/soundFromCraft.ts'
import { Says } from '../../parts/Says.tsx'
import { useApp } from '../../state/hooks.ts'
import { useListening } from '../runs/live/useListening.ts'
import { type Highest, holdHighest } from './highest.ts'
import { PondDials } from './PondDials.tsx'
import { PondRuns, usePondRuns } from './PondRuns.tsx'
import './pond.css'

/** the browser remembers in which light the page was last read */
const LIGHT = 'pond light'

/** For the phone in one hand at the water: engine speed as large as the screen takes, the highest held, a recording, the pull. */
export function PondPage() {
  const craft = useApp((s) => s.craft)
  const looked = useApp((s) => s.looked)
  const balance = craft !== undefined && looked?.craft === craft ? looked.balance : undefined
  const options = useMemo(() => (craft ? hearOptionsOf(craft) : {}), [craft])
  const runs = usePondRuns()
  const unit = useApp((s) => (s.units === 'inch' ? 'lb' : 'kg'))
  const [pull, setPull] = useState('')
  const fault = pull.trim() === '' ? undefined : readingsFault(pull)
  const latest = useRef(pull)
  latest.current = fault === undefined && unit === 'lb' ? inPounds(pull) : pull
  const keep = runs.keep
  const onRecorded = useCallback((file: File) => void keep(file, latest.current), [keep])
  const live = useListening(options, onRecorded, true)
  const highest = useRef<Highest>({})
  if (live.point) holdHighest(highest.current, live.point)
  const [dark, setDark] = useState(() => localStorage.getItem(LIGHT) === 'dark')
  useEffect(() => localStorage.setItem(LIGHT, dark ? 'dark' : 'light'), [dark])
  const recording = live.recorded !== undefined
  return (
    <section className="pond" data-dark={dark || undefined}>
      <h1 className="hush">At the pond</h1>
      <PondDials point={live.point} highest={highest.current} engines={options.engines === 1 ? 1 : 2} />
      {balance && (
        <p className="predicted">
          <Says
            says={say`Predicted tied up: ${ranged(inRpm, balance.tiedUpRotation)}, ${ranged(inScaleKg, balance.pull)} on the scale.`}
          />
        </p>
      )}
      <p className="heardsay" role="status">
        {live.on === 'opening' ? 'Waiting for the microphone…' : live.says}
        {recording && `Recording ${clockText(live.recorded ?? 0)}`}
      </p>
      <div className="pondhand">
        <label className="pull">
          Pull read, {unit}
          <input
            inputMode="decimal"
            value={pull}
            placeholder={unit === 'lb' ? '48, 51, 50' : '22, 23, 22.5'}
            onChange={(e) => setPull(e.target.value)}
          />
        </label>
        {fault !== undefined && <p role="status">{fault}</p>}
        <div className="pressed">
          <Button onPress={() => setDark(!dark)}>{dark ? 'Light' : 'Dark'}</Button>
          <Button onPress={() => (highest.current = {})}>Highest anew</Button>
          {live.on === 'off' ? (
            <Button className="main wide" onPress={() => void live.start()}>
              Listen
            </Button>
          ) : recording ? (
            <Button className="main wide" onPress={() => void live.finish()}>
              Stop and keep it
            </Button>
          ) : (
            <>
              <Button onPress={() => void live.finish()}>Stop</Button>
              <Button className="main" isDisabled={live.on !== 'on'} onPress={() => void live.record()}>
                Record
              </Button>
            </>
          )}
        </div>
      </div>
      <PondRuns runs={runs} />
      <p className="quiet">
        Caution: tie the craft to something that holds, stand clear of the jet and the rope, wear a buoyancy
        aid and the kill cord, and mind ears and neighbours.
      </p>
    </section>
  )
}
