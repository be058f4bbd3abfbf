/** What holds the craft back, in one word and one sentence made from the numbers. */

import { inNewtons, inPercent, inSpeed } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Balance, OperatingPoint, RunUp, Verdict } from './balanceTypes.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'
import { shaftPowerPeak } from './shaft.ts'
import { nearPeak } from './verdict.ts'

export function limitOf(
  model: CraftModel,
  table: Table,
  tiedUp: OperatingPoint,
  top: OperatingPoint | undefined,
  run: RunUp,
  pitch: Verdict['code'],
): Balance['limitedBy'] {
  if (!Number.isFinite(tiedUp.rotation))
    return {
      code: 'impeller',
      says: 'The engines cannot turn this impeller: it takes more torque than they have at any speed.',
    }
  if (!top) return withoutTop(table, tiedUp)
  const row = table.top!
  if (run.stuck) {
    const beyond =
      table.beyondHump === undefined ? '' : say`; past it, it would run on to ${inSpeed(table.beyondHump)}`
    return {
      code: 'hump',
      says: say`It stays below the hump at ${inSpeed(top.speed)}, lacking ${inNewtons(run.deficit ?? 0)} at ${inSpeed(run.stuckAt ?? top.speed)}${beyond}.`,
    }
  }
  const jet = row.propulsion.states[0]!.jet
  if (jet?.state === 'lost prime') return { code: 'air', says: 'The pump has lost its prime to air.' }
  if (jet?.cavitating || jet?.state === 'choked')
    return {
      code: 'cavitation',
      says: say`The jet cavitates at ${inSpeed(top.speed)}: more power would make noise, not thrust.`,
    }
  const peak = shaftPowerPeak(model.units[0]!.shaft)
  // of the best pitches none may bring the engines to their peak: then it is not the impeller that could be bettered
  const matched = pitch === 'right'
  if (!matched && top.ofPowerPeak < nearPeak.low)
    return {
      code: 'impeller',
      says: say`The impeller holds the engines ${inPercent(1 - top.ofPowerPeak)} below their best power at ${inSpeed(top.speed)}.`,
    }
  if (!matched && top.ofPowerPeak > nearPeak.high)
    return {
      code: 'impeller',
      says: say`The engines run ${inPercent(top.ofPowerPeak - 1)} past their best power at ${inSpeed(top.speed)}; the impeller cannot use what they have.`,
    }
  const used = top.power / peak.power
  return {
    code: 'engine',
    says: say`${inPercent(used)} of the engines’ best power is in use at ${inSpeed(top.speed)}, against ${inNewtons(row.drag.drag)} of drag: only more power or less drag goes faster.`,
  }
}

/** Why there is no top speed: too much thrust for the hull model's range, or none to speak of. */
function withoutTop(table: Table, tiedUp: OperatingPoint): Balance['limitedBy'] {
  if (!table.rows.some((r) => Number.isFinite(r.drag.drag) && r.speed > 0))
    return {
      code: 'hull',
      says: 'The drag model has no number for this hull and load, so no top speed is given.',
    }
  if (table.rows.some((r) => r.speed > 0 && r.propulsion.thrust > r.drag.drag))
    return {
      code: 'unknown',
      says: 'Thrust stays above drag as far as the hull model reaches, so no top speed is given.',
    }
  const flags = tiedUp.flags.map((f) => f.code)
  const air = flags.includes('lost prime')
  return {
    code: air ? 'air' : flags.includes('choked') ? 'cavitation' : 'impeller',
    says: `The jet does not move it: ${tiedUp.thrust > 0 ? inNewtons(tiedUp.thrust) : 'no thrust'} tied up, less than the drag at any speed.`,
  }
}
