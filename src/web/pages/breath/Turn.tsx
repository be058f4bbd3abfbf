import { useCallback, useEffect, useState } from 'react'
import { portFigure, waveFigure } from '../../../balance/breath/cycleFigures.ts'
import { peaksOf } from '../../../engine/torqueFromSimulation.ts'
import { ChoiceField } from '../../parts/ChoiceField.tsx'
import { Figure } from '../../parts/Figure.tsx'
import { lookOf } from '../../parts/look.ts'
import { useApp } from '../../state/hooks.ts'
import { traceAt } from './simulations.ts'
import type { Side } from './useBreath.ts'

/** One turn of the crank at a chosen speed: pressure at the port, waves along the pipe. */
export function Turn({ now, tried }: { now: Side; tried: Side | undefined }) {
  const units = useApp((s) => s.units)
  const [chosen, setChosen] = useState<number>()
  const curve = now.simulation?.output?.curve
  const speeds = (curve?.points ?? []).filter((p) => p.point).map((p) => p.rpm)
  const peak = curve && peaksOf(curve)?.power.rpm
  const rpm = chosen !== undefined && speeds.includes(chosen) ? chosen : (peak ?? 0)
  const trace = now.simulation?.traces.get(rpm)
  const triedTrace = tried?.simulation?.traces.get(rpm)
  const { key, order } = now
  useEffect(() => {
    // the first turn comes with the curve; another speed is followed when it is asked for
    if (rpm > 0 && !trace && now.simulation && !now.simulation.running) void traceAt(key, order, rpm)
  }, [rpm, trace, key, order, now.simulation])
  useEffect(() => {
    if (rpm > 0 && tried && !triedTrace && tried.simulation?.output && !tried.simulation.running)
      void traceAt(tried.key, tried.order, rpm)
  }, [rpm, tried, triedTrace])
  const port = useCallback(
    (w: number) => portFigure(trace, triedTrace, now.view.air, lookOf(units, w)),
    [trace, triedTrace, now.view.air, units],
  )
  const segments = now.view.reading?.spec?.pipe ?? []
  const waves = useCallback(
    (w: number) => waveFigure(trace, segments, now.view.air, lookOf(units, w)),
    [trace, segments, now.view.air, units],
  )
  return (
    <section className="block">
      <div className="row">
        <h2>One turn of the crank</h2>
        <ChoiceField
          label="At engine speed"
          value={`${rpm} rpm`}
          choices={speeds.map((s) => `${s} rpm`)}
          onChange={(word) => setChosen(Number.parseInt(word, 10))}
        />
      </div>
      <Figure
        draw={port}
        caption="The pipe should draw while the transfers are open and push back just before the exhaust closes."
        name="port pressure"
      />
      <Figure
        draw={waves}
        caption="Orange waves press, blue ones draw. Follow one from the port to the end cone and back: it should arrive between the transfers’ and the exhaust’s closing."
        name="waves"
      />
    </section>
  )
}
