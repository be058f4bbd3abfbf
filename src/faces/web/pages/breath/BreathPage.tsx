import { useState } from 'react'
import { Button } from 'react-aria-components/Button'
import { useApp } from '../../state/hooks.ts'
import { Given } from './Given.tsx'
import { Simulated } from './Simulated.tsx'
import { useBreath } from './useBreath.ts'
import './breath.css'

/** How do the engines breathe? One engine at a time: simulated from ports and pipe, or as far as its curve tells. */
export function BreathPage() {
  const [engine, setEngine] = useState(0)
  const breath = useBreath(engine)
  if (!breath) return null
  const { now, tried } = breath
  const choose = <Engines at={now.view.index} onPick={setEngine} />
  return now.view.kind === 'two-stroke' ? (
    <Simulated now={now} tried={tried} choose={choose} />
  ) : (
    <Given side={now} choose={choose} />
  )
}

/** which engine of the craft is looked at; nothing to choose with one */
function Engines({ at, onPick }: { at: number; onPick: (index: number) => void }) {
  const names = useApp((s) => s.craft?.engines.map((e, i) => e.name ?? `engine ${i + 1}`).join('\n')) ?? ''
  const list = names.split('\n')
  if (list.length < 2) return null
  return (
    <fieldset className="switch">
      <legend className="hush">Engine</legend>
      {list.map((name, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: engines keep their order and may share a name
        <Button key={`${i} ${name}`} aria-pressed={i === at} onPress={() => onPick(i)}>
          {name}
        </Button>
      ))}
    </fieldset>
  )
}
