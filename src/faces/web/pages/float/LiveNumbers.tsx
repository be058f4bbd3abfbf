import { stiffGm } from '../../../../trades/float/floatHeadline.ts'
import type { LiveState } from '../../../../trades/float/live.ts'
import { inLook, plain } from '../../../../whole/push/shown.ts'
import { lookOf } from '../../parts/displayLook.ts'
import { useApp } from '../../state/hooks.ts'
import type { Side } from './useFloat.ts'

interface Props {
  side: Side
  state: LiveState | undefined
  /** as the file has it */
  present: LiveState | undefined
  moved: boolean
}

/** What changes while the rider is dragged, in numbers that stay in their places. */
export function LiveNumbers({ side, state, present, moved }: Props) {
  const units = useApp((s) => s.units)
  const look = lookOf(units, 180)
  const length = (v: number) =>
    `${plain(inLook(v, 'length', look), look.length === 'mm' ? 0 : 1)} ${look.length}`
  const angle = (a: number, plus: string, minus: string) => {
    const d = (a * 180) / Math.PI
    return Math.abs(d) < 0.05 ? '0.0°' : `${Math.abs(d).toFixed(1)}° ${d > 0 ? plus : minus}`
  }
  const rows: [string, (s: LiveState) => string][] = [
    ['Trim', (s) => angle(s.attitude.trim, 'bow up', 'bow down')],
    ['Heel', (s) => angle(s.attitude.heel, 'to port', 'to starboard')],
    ['Deep at the stern', (s) => length(s.draftAft)],
    ['Deck edge above water', (s) => length(s.freeboard)],
    ['Lowest opening', (s) => (Number.isFinite(s.opening) ? length(s.opening) : 'none in the file')],
    ['GM, rider balancing', (s) => length(s.gm)],
    ['GM, rider held stiff', (s) => length(stiffGm(side.input, s.gm))],
  ]
  const said = (s: LiveState | undefined, pick: (s: LiveState) => string) =>
    !s ? '–' : s.stays ? pick(s) : 'over'
  return (
    <dl className="live" aria-label="The craft with its rider there">
      {rows.map(([name, pick]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            {said(state, pick)}
            {moved && <small>now {said(present, pick)}</small>}
          </dd>
        </div>
      ))}
    </dl>
  )
}
