import { useCallback, useEffect, useMemo, useState } from 'react'
import { Button } from 'react-aria-components/Button'
import type { Plot, Sheet } from '../../../../drawing/sheet.ts'
import type { Segment } from '../../../../physics/gas/ductMesh.ts'
import type { CycleTrace } from '../../../../trades/engine/trace.ts'
import { portAngles, turnOrder } from '../../../../whole/breath/cycleFigures.ts'
import { envelopeFigure } from '../../../../whole/breath/waveFigures.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { SheetSvg } from '../../parts/SheetSvg.tsx'
import { useApp } from '../../state/hooks.ts'

interface Props {
  trace: CycleTrace
  segments: readonly Segment[]
  /** Pa */
  air: number
}

/** seconds that one turn takes on the screen */
const slow = 8
/** with motion reduced the wave moves in steps, degrees and milliseconds */
const stride = { degrees: 15, wait: 700 }

/** Pressure along the pipe at one moment, moved by hand or played slowly. It never starts by itself. */
export function WavePlayer({ trace, segments, air }: Props) {
  const units = useApp((s) => s.units)
  const [angle, setAngle] = useState(95)
  const [playing, setPlaying] = useState(false)
  const [sheet, setSheet] = useState<Sheet>()
  const draw = useCallback(
    (w: number) => envelopeFigure(trace, segments, air, lookOf(units, w)),
    [trace, segments, air, units],
  )
  const rows = useMemo(() => turnOrder(trace), [trace])
  useEffect(() => {
    if (!playing) return
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      const timer = setInterval(() => setAngle((a) => (a + stride.degrees) % 360), stride.wait)
      return () => clearInterval(timer)
    }
    let last = performance.now()
    let frame = requestAnimationFrame(function move(time) {
      const by = ((time - last) / 1000 / slow) * 360
      last = time
      setAngle((a) => (a + by) % 360)
      frame = requestAnimationFrame(move)
    })
    return () => cancelAnimationFrame(frame)
  }, [playing])
  const row = rows[Math.min(rows.length - 1, Math.floor((angle / 360) * rows.length))]!
  const plot = sheet?.plots?.[0]
  return (
    <div className="player">
      <div className="stage">
        <SheetSvg draw={draw} onShow={setSheet} />
        {sheet && plot && (
          <svg viewBox={`0 0 ${sheet.width} ${sheet.height}`} aria-hidden="true">
            <path d={momentPath(trace, row, plot, sheet.height, air)} />
          </svg>
        )}
      </div>
      <div className="row">
        <Button onPress={() => setPlaying(!playing)}>{playing ? 'Pause' : 'Play slowly'}</Button>
        <label className="crank">
          <span className="hush">Crank angle</span>
          <input
            type="range"
            min={0}
            max={359}
            step={1}
            value={Math.floor(angle)}
            aria-valuetext={`${Math.floor(angle)} degrees after top, ${stateAt(trace, angle)}`}
            onChange={(e) => {
              setPlaying(false)
              setAngle(Number(e.target.value))
            }}
          />
        </label>
        <span className="moment">
          {Math.floor(angle)}° after top: {stateAt(trace, angle)}
        </span>
      </div>
    </div>
  )
}

/** which ports are open */
function stateAt(trace: CycleTrace, angle: number): string {
  const a = portAngles(trace)
  if (angle < a.exhaustOpens || angle > a.exhaustCloses) return 'ports shut'
  if (angle < a.transfersOpen) return 'exhaust open, blowing down'
  if (angle <= a.transfersClose) return 'exhaust and transfers open'
  return 'exhaust still open: what comes back pushes charge in again'
}

/** the line of one moment, in the plot's own millimetres */
function momentPath(trace: CycleTrace, row: number, plot: Plot, height: number, air: number): string {
  const cols = trace.x.length
  const span = plot.x.max - plot.x.min
  const inAxis = plot.x.unit === 'mm' ? 1000 : 1 / 0.0254
  let path = ''
  for (let c = 0; c < cols; c++) {
    const px = plot.left + ((trace.x[c]! * inAxis - plot.x.min) / span) * (plot.right - plot.left)
    const p = (trace.pressure[row * cols + c]! - air) / 1e5
    const py = plot.bottom + ((p - plot.y.min) / (plot.y.max - plot.y.min)) * (plot.top - plot.bottom)
    path += `${c === 0 ? 'M' : 'L'}${px.toFixed(2)} ${(height - py).toFixed(2)}`
  }
  return path
}
