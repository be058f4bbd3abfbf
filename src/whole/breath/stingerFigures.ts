/** Other stingers on the present pipe: pull, temperature and back pressure against bore, with the risk of each. */

import { lineChart } from '../../drawing/chart.ts'
import type { ChartMarker } from '../../drawing/chartSpec.ts'
import { stacked } from '../../drawing/compose.ts'
import { type MarkerShape, okabeIto } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Risk, StingerRow } from '../../trades/exhaust/exhaustTypes.ts'
import { inLook, type Look, plain, says } from '../push/shown.ts'

const signs: Record<Risk, { shape: MarkerShape; colour: string; word: string }> = {
  good: { shape: 'circle', colour: okabeIto.green, word: 'good' },
  watch: { shape: 'triangle', colour: '#a06a00', word: 'watch' },
  stop: { shape: 'cross', colour: okabeIto.vermillion, word: 'stop' },
}

export interface StingerOrder {
  rows: readonly StingerRow[]
  now: StingerRow
  best: StingerRow
  /** true when the craft has no jet that loads the engine: torque then stands for pull */
  noJet?: boolean
}

/** Three curves over the same bores, the present and the best one marked; signs along them tell the risk. */
export function stingerFigure({ rows, now, best, noJet }: StingerOrder, look: Look): Sheet {
  const bore = (r: StingerRow) => inLook(r.bore, 'length', look)
  const x = rows.map(bore)
  const range = { min: Math.min(...x, bore(now)), max: Math.max(...x, bore(now)) }
  const one = (
    label: string,
    unit: string,
    pick: (r: StingerRow) => number,
    colour: string,
    last: boolean,
    named: boolean,
  ) => {
    const markers: ChartMarker[] = rows.map((r) => ({
      x: bore(r),
      y: pick(r),
      ...{ shape: signs[r.risk].shape, colour: signs[r.risk].colour },
    }))
    markers.push({
      x: bore(now),
      y: pick(now),
      shape: 'square',
      hollow: true,
      colour: okabeIto.black,
      ...(named ? { label: `now ${plain(pick(now), 0)} ${unit}` } : {}),
    })
    if (best.bore !== now.bore)
      markers.push({
        x: bore(best),
        y: pick(best),
        shape: 'diamond',
        hollow: true,
        colour: okabeIto.black,
        ...(named ? { label: `best ${plain(pick(best), 0)} ${unit}` } : {}),
      })
    return lineChart({
      title: label,
      says: '',
      width: look.width,
      height: last ? 50 : 45,
      x: { label: 'stinger bore', unit: look.length, ...range },
      y: { label, unit },
      series: [{ name: label, x, y: rows.map(pick), colour, signs: false, label: false, width: 0.5 }],
      markers,
    })
  }
  const pull = noJet
    ? one('most torque', look.torque, (r) => inLook(r.torque, 'torque', look), okabeIto.blue, false, true)
    : one('pull tied up', look.force, (r) => inLook(r.pull, 'force', look), okabeIto.blue, false, true)
  const sheets = [
    pull,
    one(
      'exhaust gas',
      look.temperature,
      (r) => inLook(r.exhaustT, 'temperature', look),
      okabeIto.vermillion,
      false,
      true,
    ),
    one(
      'over the air in the belly',
      look.pressure,
      (r) => inLook(r.inside, 'pressure', look),
      okabeIto.purple,
      true,
      true,
    ),
  ]
  return stacked(sheets, 2, 'Stinger bore: pull, temperature, risk', inWords({ rows, now, best }, look))
}

function inWords({ rows, now, best }: StingerOrder, look: Look): string {
  const bore = (r: StingerRow) =>
    `${plain(inLook(r.bore, 'length', look), look.length === 'mm' ? 1 : 2)} ${look.length}`
  const each = rows
    .map(
      (r) =>
        `${bore(r)}: ${says(r.pull, 'force', look)}, ${plain(inLook(r.exhaustT, 'temperature', look), 0)} ${look.temperature}, ${signs[r.risk].word}`,
    )
    .join('; ')
  return `Now ${bore(now)}; best ${bore(best)}. ${each}.`
}
