import { useCallback } from 'react'
import { portFigure } from '../../../../whole/breath/cycleFigures.ts'
import { waveFigure } from '../../../../whole/breath/waveFigures.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import { Listen } from './Listen.tsx'
import type { Side } from './useBreath.ts'
import type { TurnState } from './useTurn.ts'
import { WavePlayer } from './WavePlayer.tsx'

/** Pressure at the port over a turn, with the speed to look at. */
export function PortPressure({ now, turn }: { now: Side; turn: TurnState }) {
  const units = useApp((s) => s.units)
  const { trace, triedTrace, rpm, speeds } = turn
  const draw = useCallback(
    (w: number) => portFigure(trace, triedTrace, now.view.air, lookOf(units, w)),
    [trace, triedTrace, now.view.air, units],
  )
  return (
    <div className="block figure">
      <div className="row">
        <h2>What the pipe does to the port</h2>
        <ChoiceField
          label="At engine speed"
          value={`${rpm} rpm`}
          choices={speeds.map((s) => `${s} rpm`)}
          onChange={(word) => turn.choose(Number.parseInt(word, 10))}
        />
      </div>
      <Figure
        draw={draw}
        caption="It should draw while the transfers are open and push back just before the exhaust closes. Dotted: the cylinder."
        name="port pressure"
      />
    </div>
  )
}

/** The waves of one turn: as a picture, moving, and as a note. */
export function Waves({ now, turn }: { now: Side; turn: TurnState }) {
  const units = useApp((s) => s.units)
  const { trace, triedTrace, rpm } = turn
  const { view } = now
  const draw = useCallback(
    (w: number) => waveFigure(trace, view.reading?.spec?.pipe ?? [], view.air, lookOf(units, w)),
    [trace, view, units],
  )
  const segments = view.reading?.spec?.pipe ?? []
  return (
    <>
      <section className="block">
        <h2>The waves in the pipe at {rpm} rpm</h2>
        <Figure
          draw={draw}
          caption="Orange presses, blue draws. Follow the wave that leaves the port when it opens: its echo from the end cone should be back between the closing of transfers and exhaust."
          name="waves"
        />
        {trace && <WavePlayer trace={trace} segments={segments} air={view.air} />}
      </section>
      {trace && <Listen trace={trace} tried={triedTrace} cylinders={view.reading?.cylinders ?? 1} />}
    </>
  )
}
