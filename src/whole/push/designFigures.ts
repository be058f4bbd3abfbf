/** The design search drawn: pull against speed with what is fitted and what may be, and both over the pitch. */
import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker, ChartSeries } from '../../drawing/chartSpec.ts'
import { okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Buys } from './changesFigure.ts'
import type { DesignAnswer, DesignOption, Does, PitchLine } from './designTypes.ts'
import { heightFor } from './figureLook.ts'
import { inLook, type Look, says } from './shown.ts'

/** options drawn beside what is fitted: more would hide one another */
const most = 4

const optionColours = [okabeIto.green, okabeIto.blue, okabeIto.orange, okabeIto.purple] as const
const shapes = ['diamond', 'square', 'triangle', 'circle'] as const

/** A few words at an option's place. */
function shortly(o: DesignOption, look: Look): string {
  const { pitch, blades, nozzle, ratio } = o.design
  switch (o.id) {
    case 'nozzle':
      return `nozzle ${says(nozzle, 'length', look)}`
    case 'ratio':
      return `ratio ${ratio.toFixed(2)}`
    case 'blade-cut':
      return `${blades} of these blades`
    case 'together':
      return `${blades} blades, ${says(pitch, 'length', look)}, nozzle ${says(nozzle, 'length', look)}`
    default:
      return `${blades} blades, ${says(pitch, 'length', look)}`
  }
}

/** A cross as wide and high as the likely ranges. */
function crossOf(name: string, does: Does, colour: string, look: Look): ChartSeries[] {
  const speed = (v: number) => inLook(v, 'speed', look)
  const force = (v: number) => inLook(v, 'force', look)
  const { pull, topSpeed } = does
  const arm = { colour, width: 0.3, label: false, signs: false } as const
  return [
    {
      ...arm,
      name: `${name}, likely speeds`,
      x: [speed(topSpeed.low), speed(topSpeed.high)],
      y: [force(pull.value), force(pull.value)],
    },
    {
      ...arm,
      name: `${name}, likely pulls`,
      x: [speed(topSpeed.value), speed(topSpeed.value)],
      y: [force(pull.low), force(pull.high)],
    },
  ]
}

/** Pull tied up against top speed: what is fitted, and the options worth looking at, each with its doubt. */
export function choiceFigure(answer: DesignAnswer, look: Look): Sheet {
  const known = (d: Does) => Number.isFinite(d.topSpeed.value) && Number.isFinite(d.pull.value)
  const shown = answer.options
    .filter(known)
    .sort((a, b) => Number(b.offered) - Number(a.offered))
    .slice(0, most)
  const marker = (d: Does, shape: ChartMarker['shape'], colour: string, label: string): ChartMarker => ({
    x: inLook(d.topSpeed.value, 'speed', look),
    y: inLook(d.pull.value, 'force', look),
    shape,
    colour,
    label,
  })
  const now = known(answer.now)
  const best = shown[0]
  return lineChart({
    title: 'Pull against speed',
    says: best
      ? `Best for what is wanted: ${shortly(best, look)}, ${says(best.pull.value, 'force', look)} and ${says(best.topSpeed.value, 'speed', look)}${now ? `; now ${says(answer.now.pull.value, 'force', look)} and ${says(answer.now.topSpeed.value, 'speed', look)}` : ''}.`
      : 'Nothing to compare with what is fitted yet.',
    width: look.width,
    height: heightFor(look, 0.5),
    x: { label: 'top speed', unit: look.speed },
    y: { label: 'pull tied up', unit: look.force },
    series: [
      ...(now ? crossOf('now', answer.now, okabeIto.black, look) : []),
      ...shown.flatMap((o, i) => crossOf(shortly(o, look), o, optionColours[i]!, look)),
    ],
    markers: [
      ...(now ? [marker(answer.now, 'circle', okabeIto.black, 'now')] : []),
      ...shown.map((o, i) => marker(o, shapes[i]!, optionColours[i]!, shortly(o, look))),
    ],
    empty: 'No impeller has been found that these engines turn.',
  })
}

const bladeColours: Readonly<Record<number, string>> = {
  2: okabeIto.vermillion,
  3: okabeIto.blue,
  4: okabeIto.green,
  5: okabeIto.purple,
}

/** Pull or top speed over pitch with the nozzle that is fitted, one line for each number of blades. */
export function pitchFigure(answer: DesignAnswer, by: Buys, look: Look): Sheet {
  const kind = by === 'pull' ? 'force' : 'speed'
  const { now, fitted } = answer
  const length = (p: number) => inLook(p, 'length', look)
  const line = (l: PitchLine): ChartSeries => ({
    name: `${l.blades} blades`,
    x: l.pitch.map(length),
    y: l[by].map((v) => inLook(v, kind, look)),
    colour: bladeColours[l.blades] ?? okabeIto.black,
  })
  const value = now[by].value
  return lineChart({
    title: by === 'pull' ? 'Pull over pitch' : 'Top speed over pitch',
    says: fitted
      ? `With ${now.design.blades} blades ${says(fitted.low, 'length', look)} to ${says(fitted.high, 'length', look)} does best; fitted is ${says(now.design.pitch, 'length', look)}.`
      : 'With the blades that are fitted no pitch runs.',
    width: look.width,
    height: heightFor(look, 0.4),
    x: { label: 'pitch', unit: look.length },
    y: { label: by === 'pull' ? 'pull tied up' : 'top speed', unit: look[kind], min: 0 },
    series: answer.lines.map(line),
    zones: fitted
      ? [
          {
            axis: 'x',
            from: length(fitted.low),
            to: length(fitted.high),
            label: `best, ${now.design.blades} blades`,
            colour: okabeIto.green,
          },
        ]
      : [],
    markers: Number.isFinite(value)
      ? [
          {
            x: length(now.design.pitch),
            y: inLook(value, kind, look),
            shape: 'circle',
            colour: okabeIto.black,
            label: 'now',
          },
        ]
      : [],
    empty: 'No impeller has been found that these engines turn.',
  })
}
