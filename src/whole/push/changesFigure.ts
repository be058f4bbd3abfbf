import { printed } from '../../base/answers/sentence.ts'
/** What each change would buy, and where the doubt of an answer comes from, as bars. */
import type { Craft } from '../../craft/index.ts'
import { barChart } from '../../drawing/bars.ts'
import { okabeIto, quiet } from '../../drawing/palette.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import type { Balance, Change, Driver } from './balanceTypes.ts'
import { driverName } from './pushAnswer.ts'
import { inLook, type Look, says, saysStep, systemOf } from './shown.ts'

export type Buys = 'topSpeed' | 'pull'

/** What each single change would buy, the largest gain first. */
export function changesFigure(now: Balance, other: Balance | undefined, by: Buys, look: Look): Sheet {
  const kind = by === 'topSpeed' ? 'speed' : 'force'
  const step = (v: number) => inLook(v, kind, look)
  const rows = changesBy(now.changes, by).map((c) => {
    const row = {
      name: printed(c.says, systemOf(look)),
      value: step(c[by].value),
      colour: c[by].value >= 0 ? okabeIto.blue : quiet,
      note: saysStep(c[by].value, kind, look),
      ...triedValue(other?.changes.find((o) => o.id === c.id)?.[by].value, step),
    }
    return Number.isFinite(c[by].low + c[by].high)
      ? { ...row, low: step(c[by].low), high: step(c[by].high) }
      : row
  })
  const first = rows[0]
  const base = by === 'topSpeed' ? now.topSpeed.value : now.pull.value
  return barChart({
    title: by === 'topSpeed' ? 'What each change does to the top speed' : 'What each change does to the pull',
    says: first ? `Most comes from: ${first.name}, ${first.note}.` : 'No change has been worked out yet.',
    width: look.width,
    axis: { label: by === 'topSpeed' ? 'top speed, change' : 'pull tied up, change', unit: look[kind] },
    baseLabel: `now ${says(base, kind, look)}`,
    rows,
    empty: now.ranged
      ? 'None of the usual changes could be worked out.'
      : 'Working out what each change would do…',
  })
}

/** The same bar with the tried values, where it is known. */
function triedValue(value: number | undefined, shown: (v: number) => number): { tried?: number } {
  return value !== undefined && Number.isFinite(value) ? { tried: shown(value) } : {}
}

const sourceColour: Record<Driver['source'], string> = {
  measured: okabeIto.blue,
  maker: okabeIto.blue,
  guess: okabeIto.orange,
  assumed: okabeIto.orange,
  model: quiet,
}

/** Where the doubt of an answer comes from: how far each input alone may move it either way, eight at most. */
export function doubtsFigure(
  craft: Craft,
  now: Balance,
  other: Balance | undefined,
  by: Buys,
  look: Look,
): Sheet {
  const kind = by === 'topSpeed' ? 'speed' : 'force'
  const drivers = now.drivers
    .filter((d) => d[by] > 0)
    .sort((a, b) => b[by] - a[by])
    .slice(0, 8)
  const rows = drivers.map((d) => ({
    name: `${driverName(craft, d)} (${d.source})`,
    value: inLook(d[by], kind, look),
    note: `± ${says(d[by], kind, look)}`,
    ...triedValue(other?.drivers.find((o) => o.path === d.path)?.[by], (v) => inLook(v, kind, look)),
    colour: sourceColour[d.source],
  }))
  return barChart({
    title:
      by === 'topSpeed'
        ? 'What the doubt of the top speed comes from'
        : 'What the doubt of the pull comes from',
    says: rows[0] ? `Most of it: ${rows[0].name}, ${rows[0].note}.` : 'Not worked out yet.',
    width: look.width,
    axis: { label: by === 'topSpeed' ? 'top speed, either way' : 'pull, either way', unit: look[kind] },
    rows,
    empty: now.ranged ? 'No input carries any doubt.' : 'Working out where the doubt comes from…',
  })
}

/** Changes with a known effect on one answer, the largest gain first, twelve at most. */
export function changesBy(changes: readonly Change[], by: Buys): Change[] {
  return changes
    .filter((c) => Number.isFinite(c[by].value))
    .sort((a, b) => b[by].value - a[by].value)
    .slice(0, 12)
}
