import { useCallback } from 'react'
import { portFigure } from '../../../../whole/breath/cycleFigures.ts'
import { waveFigure } from '../../../../whole/breath/waveFigures.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { FoldPart } from '../../parts/Fold.tsx'
import { useApp } from '../../state/hooks.ts'
import { Listen } from './Listen.tsx'
import type { Side } from './useBreath.ts'
import type { TurnState } from './useTurn.ts'
import { WavePlayer } from './WavePlayer.tsx'

/** One turn of the crank, each view of it in a fold. */
export function turnFolds(now: Side, turn: TurnState): FoldPart[] {
  const { rpm, trace, triedTrace } = turn
  const note = trace && {
    id: 'listen',
    title: 'How it sounds',
    says: `the note at the outlet at ${rpm} rpm`,
    children: <Listen trace={trace} tried={triedTrace} cylinders={now.view.reading?.cylinders ?? 1} />,
  }
  return [
    {
      id: 'port',
      title: 'What the pipe does to the port',
      says: `pressure over a turn at ${rpm} rpm`,
      children: <PortPressure now={now} turn={turn} />,
    },
    {
      id: 'waves',
      title: 'The waves in the pipe',
      says: `at ${rpm} rpm, as a picture and moving`,
      children: <Waves now={now} turn={turn} />,
    },
    ...(note ? [note] : []),
  ]
}

/** Pressure at the port over a turn, with the speed to look at. */
function PortPressure({ now, turn }: { now: Side; turn: TurnState }) {
  const units = useApp((s) => s.units)
  const { trace, triedTrace, rpm, speeds } = turn
  const draw = useCallback(
    (w: number) => portFigure(trace, triedTrace, now.view.air, lookOf(units, w)),
    [trace, triedTrace, now.view.air, units],
  )
  return (
    <div className="block">
      <ChoiceField
        label="At engine speed"
        value={`${rpm} rpm`}
        choices={speeds.map((s) => `${s} rpm`)}
        onChange={(word) => turn.choose(Number.parseInt(word, 10))}
      />
      <Figure
        draw={draw}
        caption="It should draw while the transfers are open and push back just before the exhaust closes. Dotted: the cylinder."
        name="port pressure"
      />
    </div>
  )
}

/** The waves of one turn, as a picture and moving. */
function Waves({ now, turn }: { now: Side; turn: TurnState }) {
  const units = useApp((s) => s.units)
  const { trace } = turn
  const { view } = now
  const draw = useCallback(
    (w: number) => waveFigure(trace, view.reading?.spec?.pipe ?? [], view.air, lookOf(units, w)),
    [trace, view, units],
  )
  const segments = view.reading?.spec?.pipe ?? []
  return (
    <div className="block">
      <Figure
        draw={draw}
        caption="Orange presses, blue draws. Follow the wave that leaves the port when it opens: its echo from the end cone should be back between the closing of transfers and exhaust."
        name="waves"
      />
      {trace && <WavePlayer trace={trace} segments={segments} air={view.air} />}
    </div>
  )
}
