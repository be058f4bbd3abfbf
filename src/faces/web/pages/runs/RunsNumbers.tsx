import { clockText, heardPart, heardTracksOf, usualSpeed } from '../../../../trades/sound/heardAnswer.ts'
import type { Hearing } from '../../../../trades/sound/hearingTypes.ts'
import { plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'

const ten = (rpm: number) => Math.round(rpm / 10) * 10

/** Each engine's numbers, how evenly it fired, and its speed over time to be copied. */
export function Numbers({ hearing: h }: { hearing: Hearing }) {
  const tracks = heardTracksOf(h)
  if (tracks.length === 0) return null
  const seconds = Math.ceil(h.duration)
  // a table is for reading: a row a second for half a minute, fewer for longer runs
  const every = Math.max(1, Math.ceil(seconds / 40))
  const per = Math.round(1 / h.step)
  return (
    <>
      <NumbersTable
        caption="Engines"
        columns={[
          { head: 'Engine' },
          { head: 'Usual speed', unit: 'rpm' },
          { head: 'Heard for', unit: 's' },
          { head: 'Confidence', unit: '%' },
          { head: 'Firing' },
          { head: 'Blade-pass slip', unit: '%' },
        ]}
        rows={tracks.map((t) => {
          const { part, confidence } = heardPart(t)
          const blade = h.bladePass?.label === t.label ? h.bladePass : undefined
          return [
            t.label,
            ten(usualSpeed(t)),
            plain(part * h.duration, 1),
            Math.min(99, Math.round(100 * confidence)),
            [...new Set(h.quality.filter((q) => q.label === t.label).map((q) => q.reads))].join(', ') ||
              'not told apart',
            blade && Number.isFinite(blade.slip) ? plain(100 * blade.slip, 1) : 'not audible',
          ]
        })}
      />
      <details>
        <summary>Speed over time, as a table</summary>
        <NumbersTable
          caption="Speed over time"
          columns={[
            { head: 'Time' },
            { head: 'Engines' },
            ...tracks.map((t) => ({ head: `Engine ${t.label}`, unit: 'rpm' })),
          ]}
          rows={Array.from({ length: Math.floor(seconds / every) + 1 }, (_, k) => {
            const i = Math.min(h.time.length - 1, k * every * per)
            return [
              clockText(k * every),
              h.count[i] ?? 0,
              ...tracks.map((t) => ((t.rpm[i] ?? 0) > 0 ? ten(t.rpm[i]!) : '–')),
            ]
          })}
        />
      </details>
    </>
  )
}
