/** What the muffler takes off at each frequency, and what is left of the engine's own harmonics. */
import { lineChart } from '../../drawing/chart.ts'
import { okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { boxLoss, type MufflerBox } from '../../trades/exhaust/muffler.ts'
import { inLook, type Look, plain, saysRpm } from '../push/shown.ts'

/** Gas in the box: sound speed m/s and density kg/m³ of exhaust at a temperature (K) and pressure (Pa). */
export function boxGas(temperature: number, pressure: number): { c: number; density: number } {
  // the pipe's gas, as in the simulation
  const [gamma, r] = [1.32, 295]
  return { c: Math.sqrt(gamma * r * temperature), density: pressure / (r * temperature) }
}

export interface MufflerOrder {
  box: MufflerBox
  tried?: MufflerBox | undefined
  /** K in the box, and whether a simulation said so */
  temperature: number
  simulated: boolean
  /** Pa outside */
  air: number
  /** rev/min whose harmonics are marked */
  rpm: number
}

const most = 2000

/** Transmission loss of the box over frequency; firing frequency and its harmonics marked. */
export function mufflerFigure(order: MufflerOrder, look: Look): Sheet {
  const { c, density } = boxGas(order.temperature, order.air)
  const frequency = Float64Array.from({ length: 250 }, (_, i) => 20 + (i * (most - 20)) / 249)
  const now = boxLoss(order.box, frequency, c, density)
  const tried = order.tried && boxLoss(order.tried, frequency, c, density)
  const first = order.rpm / 60
  const harmonics = [1, 2, 3, 4].map((k) => k * first).filter((f) => f < most)
  const at = boxLoss(order.box, harmonics, c, density).loss
  const hot = `${plain(inLook(order.temperature, 'temperature', look), 0)} ${look.temperature}${order.simulated ? '' : ', assumed'}`
  return lineChart({
    title: 'What the muffler takes off',
    says: `With gas at ${hot}, at ${saysRpm(first)}: ${harmonics.map((f, i) => `${plain(at[i]!, 0)} dB at ${plain(f, 0)} Hz`).join(', ')}.`,
    width: look.width,
    height: Math.min(88, Math.max(66, look.width * 0.34)),
    x: { label: 'frequency', unit: 'Hz', min: 0, max: most },
    y: { label: 'transmission loss', unit: 'dB', min: 0 },
    series: [
      { name: 'box', x: now.frequency, y: now.loss, colour: okabeIto.blue, signs: false, label: false },
      ...(tried
        ? [{ name: 'box, tried', label: 'tried', tried: true, x: tried.frequency, y: tried.loss }]
        : []),
    ],
    lines: harmonics.map((f, i) => ({
      axis: 'x' as const,
      at: f,
      label: i === 0 ? 'firing' : `× ${i + 1}`,
    })),
    markers: harmonics.map((f, i) => ({
      x: f,
      y: at[i]!,
      shape: 'circle' as const,
      colour: okabeIto.vermillion,
    })),
    zones:
      now.planeTo < most
        ? [{ axis: 'x', from: now.planeTo, to: most, label: 'not reliable here', colour: okabeIto.orange }]
        : [],
  })
}
