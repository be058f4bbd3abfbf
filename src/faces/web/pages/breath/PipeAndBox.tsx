import { useCallback } from 'react'
import { portFigures } from '../../../../trades/engine/portFigures.ts'
import { peaksOf } from '../../../../trades/engine/torqueFromSimulation.ts'
import { mufflerFigure } from '../../../../whole/breath/mufflerFigures.ts'
import { pipeFigure } from '../../../../whole/breath/pipeFigure.ts'
import { portsFigure } from '../../../../whole/breath/portsFigure.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useBreath.ts'

/** K, of the gas in a muffler when no simulation tells; common practice, no source */
const usualBox = 600

/** The pipe to scale, the ports' time-areas and the muffler. */
export function PipeAndBox({ now, tried }: { now: Side; tried: Side | undefined }) {
  const units = useApp((s) => s.units)
  const pipe = useCallback(
    (w: number) => {
      const other = tried?.view.pipe && { name: 'tried', pipe: tried.view.pipe }
      return pipeFigure(now.view.pipe!, other, lookOf(units, w))
    },
    [now.view, tried?.view, units],
  )
  const curve = now.simulation?.output?.curve
  const peak = curve && peaksOf(curve)?.power
  const rpm = peak?.rpm ?? 8000
  const ports = useCallback(
    (w: number) => {
      const other = tried?.view.reading?.spec
      return portsFigure(
        portFigures(now.view.reading!.spec!, rpm),
        other && portFigures(other, rpm),
        rpm,
        lookOf(units, w),
      )
    },
    [now.view, tried?.view, rpm, units],
  )
  const exhaustT = peak?.point?.exhaustT
  const muffler = useCallback(
    (w: number) =>
      mufflerFigure(
        {
          box: now.view.box!,
          tried: tried?.view.box,
          temperature: exhaustT ?? usualBox,
          simulated: exhaustT !== undefined,
          air: now.view.air,
          rpm,
        },
        lookOf(units, w),
      ),
    [now.view, tried?.view, exhaustT, rpm, units],
  )
  return (
    <>
      {now.view.pipe && (
        <section className="block">
          <h2>The pipe</h2>
          <Figure
            draw={pipe}
            caption="To scale, inside sizes, bends straightened; the shaded piece is the duct in the cylinder."
            name="pipe"
          />
        </section>
      )}
      <div className="two">
        <section className="block">
          <h2>Are the ports large enough?</h2>
          <Figure
            draw={ports}
            caption="Tinted: what published guidance asks for at this speed. A bar that ends short holds the engine back."
            name="ports"
          />
        </section>
        {now.view.box ? (
          <section className="block">
            <h2>What the muffler takes off</h2>
            <Figure
              draw={muffler}
              caption={`Plane waves, gas at ${Math.round((exhaustT ?? usualBox) - 273.15)} °C; low where the engine fires is what the neighbours hear.`}
              name="muffler"
            />
          </section>
        ) : (
          <section className="block">
            <h2>No muffler</h2>
            <p>The craft file has no muffler for this engine; with one, this page shows what it takes off.</p>
          </section>
        )}
      </div>
    </>
  )
}
