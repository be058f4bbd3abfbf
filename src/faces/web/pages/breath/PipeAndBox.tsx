import { useCallback } from 'react'
import { inCelsius } from '../../../../base/answers/amounts.ts'
import { say } from '../../../../base/answers/sentence.ts'
import { portFigures } from '../../../../trades/engine/portFigures.ts'
import { peaksOf } from '../../../../trades/engine/torqueFromSimulation.ts'
import { mufflerFigure } from '../../../../whole/breath/mufflerFigures.ts'
import { pipeFigure } from '../../../../whole/breath/pipeFigure.ts'
import { portsFigure } from '../../../../whole/breath/portsFigure.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { Figure } from '../../parts/Figure.tsx'
import type { FoldPart } from '../../parts/Fold.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useBreath.ts'

/** K, of the gas in a muffler when no simulation tells; common practice, no source */
const usualBox = 600

interface Props {
  now: Side
  tried: Side | undefined
}

/** engine speed of most power, and the exhaust there, K */
function peakOf({ simulation }: Side) {
  const curve = simulation?.output?.curve
  const peak = curve && peaksOf(curve)?.power
  return { rpm: peak?.rpm ?? 8000, exhaustT: peak?.point?.exhaustT }
}

/** The pipe to scale, the ports' time-areas and the muffler, each in a fold of its own. */
export function partFolds(now: Side, tried: Side | undefined): FoldPart[] {
  const { rpm } = peakOf(now)
  const pipe = now.view.pipe && {
    id: 'pipe',
    title: 'The pipe',
    says: 'to scale, as the gas sees it',
    children: <Pipe now={now} tried={tried} />,
  }
  return [
    ...(pipe ? [pipe] : []),
    {
      id: 'ports',
      title: 'Are the ports large enough?',
      says: `time-areas at ${rpm} rpm against published guidance`,
      children: <Ports now={now} tried={tried} />,
    },
    {
      id: 'muffler',
      title: 'What the muffler takes off',
      says: now.view.box ? 'pitch by pitch' : 'no muffler in the file',
      children: <Muffler now={now} tried={tried} />,
    },
  ]
}

function Pipe({ now, tried }: Props) {
  const units = useApp((s) => s.units)
  const draw = useCallback(
    (w: number) => {
      const other = tried?.view.pipe && { name: 'tried', pipe: tried.view.pipe }
      return pipeFigure(now.view.pipe!, other, lookOf(units, w))
    },
    [now.view, tried?.view, units],
  )
  return (
    <Figure
      draw={draw}
      caption="To scale, inside sizes, bends straightened; the shaded piece is the duct in the cylinder."
      name="pipe"
    />
  )
}

function Ports({ now, tried }: Props) {
  const units = useApp((s) => s.units)
  const { rpm } = peakOf(now)
  const draw = useCallback(
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
  return (
    <Figure
      draw={draw}
      caption="Tinted: what published guidance asks for at this speed. A bar that ends short holds the engine back."
      name="ports"
    />
  )
}

function Muffler({ now, tried }: Props) {
  const units = useApp((s) => s.units)
  const { rpm, exhaustT } = peakOf(now)
  const draw = useCallback(
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
  if (!now.view.box)
    return <p>The craft file has no muffler for this engine; with one, this page shows what it takes off.</p>
  return (
    <Figure
      draw={draw}
      caption={say`Plane waves, gas at ${inCelsius(exhaustT ?? usualBox)}; low where the engine fires is what the neighbours hear.`}
      name="muffler"
    />
  )
}
