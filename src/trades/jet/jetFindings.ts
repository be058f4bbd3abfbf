/** What the jet has to say for itself, from a craft and where the balance found it running. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import { solveJet } from './jet.ts'
import { jetFromCraft } from './jetFromCraft.ts'
import { type JetLimits, jetLimits } from './jetLimits.ts'
import type { JetSituation, View } from './say/jetView.ts'
import { bladesOf, gapOf, grateOf, loadingOf, rootOf, statorOf, surfaceOf } from './say/rotorFindings.ts'
import { airOf, cavitationTiedOf, cavitationTopOf, intakeOf } from './say/waterFindings.ts'

/** What a solved balance must hold for its jet to be spoken of. */
interface Balanced {
  tiedUp: { rotation: number; impellerRotation: number }
  top?: { impellerRotation: number; speed: number }
  matching: { rotation: readonly number[] }
}

/** The situation of the first jet of a solved balance. */
export function situationOf(balance: Balanced): JetSituation {
  const ratio = balance.tiedUp.rotation / balance.tiedUp.impellerRotation
  const { top } = balance
  return {
    tiedUp: balance.tiedUp.impellerRotation,
    most: Math.max(...balance.matching.rotation) / ratio,
    ratio,
    ...(top ? { top: { rotation: top.impellerRotation, V: top.speed } } : {}),
  }
}

/** Builds every jet finding. Without a situation (no torque curve yet) only what needs no rotation is said. */
export function jetFindings(craft: Craft, at?: JetSituation, limits: JetLimits = jetLimits): Finding[] {
  const spec = jetFromCraft(craft)
  const out: Finding[] = [grateOf(craft, limits), gapOf(craft, spec, limits)].filter((f) => f !== undefined)
  if (!at || !(at.tiedUp > 0)) return out
  const view: View = { craft, spec, at, tied: solveJet(spec, at.tiedUp, 0) }
  if (at.top && at.top.rotation > 0) view.top = solveJet(spec, at.top.rotation, at.top.V)
  out.push(cavitationTiedOf(view, limits))
  if (view.top) out.push(cavitationTopOf(view.top, limits), intakeOf(view, view.top, limits))
  out.push(airOf(view), loadingOf(view, limits), bladesOf(view, limits))
  for (const f of [surfaceOf(view, limits), rootOf(view, limits), statorOf(view)]) if (f) out.push(f)
  return out
}
