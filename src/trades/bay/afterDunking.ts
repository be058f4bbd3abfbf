/**
 * What to do with a craft that went under, made from what its file says. Order and times: common practice of small two-strokes pulled out
 * of the water (open, drain, turn without spark, dry, oil, run within hours before bearings rust), no source.
 */
import { inCm3, inCount, inLitres, inMinutes } from '../../base/answers/amounts.ts'
import { joined, type Sentence, say, whole } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { tankLiquid } from '../../craft/tankRoom.ts'
import type { Card } from '../trade.ts'
import type { BayInputs } from './bayFromCraft.ts'

interface Step {
  says: Sentence
  /** min */
  minutes: number
}

type Engine = Craft['engines'][number]
type Piston = Exclude<Engine, { kind: 'electric' }>

const nameOf = (e: Engine, i: number) => e.name ?? `engine ${i + 1}`

const volumeOf = (e: Piston): number =>
  e.kind === 'two-stroke'
    ? (Math.PI / 4) * e.bore.value ** 2 * e.stroke.value * e.cylinders.value
    : e.displacement.value

/** m³ that stand in pipe and box of a two-stroke whose exhaust the file gives */
function exhaustHolds(e: Piston): number {
  if (e.kind !== 'two-stroke' || !e.exhaust) return 0
  const cone = (a: number, b: number, l: number) => (Math.PI / 12) * (a * a + a * b + b * b) * l
  const pipe = e.exhaust.pipe.reduce((sum, s) => sum + cone(s.from.value, s.to.value, s.length.value), 0)
  const box = e.exhaust.muffler
  if (!box) return pipe
  const [l, w] = [box.length.value, box.width.value]
  return pipe + (box.height ? l * w * box.height.value : (Math.PI / 4) * w * w * l)
}

/** The steps, in order. */
export function dunkingSteps({ craft }: Pick<BayInputs, 'craft'>): Step[] {
  const pistons = craft.engines.flatMap((e, i) => (e.kind === 'electric' ? [] : [{ e, name: nameOf(e, i) }]))
  const motors = craft.engines.flatMap((e, i) => (e.kind === 'electric' ? [nameOf(e, i)] : []))
  const all = pistons.map((p) => p.name).join(' and ')
  return [
    ...first(craft, motors, pistons.length > 0),
    ...(pistons.length > 0 ? engineSteps(pistons, all) : []),
    ...exhaustSteps(pistons),
    ...intakeSteps(pistons),
    ...fuelSteps(craft),
    ...boxSteps(craft),
    ...(pistons.length > 0 ? lastSteps(pistons, all) : []),
  ]
}

function first(craft: Craft, motors: readonly string[], petrol: boolean): Step[] {
  const hatches = craft.openings.filter((o) => o.kind === 'hatch').map((o) => o.name)
  const open = craft.compartments.filter((c) => !c.sealed).map((c) => c.name)
  return [
    {
      says: petrol
        ? 'kill cord out, plug leads off, fuel tap shut; pull no cord yet: water in a cylinder bends its rod'
        : 'kill cord out, battery off',
      minutes: 2,
    },
    ...(motors.length > 0
      ? [
          {
            says: say`take the battery off ${motors.join(' and ')} and let motor and controller dry for ${inMinutes(1440 * 60, 60)} before current goes on`,
            minutes: 5,
          },
        ]
      : []),
    {
      says: say`ashore, ${hatches.length > 0 ? say`open ${hatches.join(', ')}` : 'open every lid'} and drain ${open.length > 0 ? open.join(', ') : 'the hull'}, nose up and then nose down`,
      minutes: 10,
    },
    ...(craft.place.water === 'salt'
      ? [
          {
            says: say`rinse everything that the sea was in with ${inLitres(0.02, 1)} of fresh water before it dries`,
            minutes: 10,
          },
        ]
      : []),
  ]
}

function engineSteps(pistons: readonly { e: Piston; name: string }[], all: string): Step[] {
  const plugs = pistons.reduce((sum, { e }) => sum + e.cylinders.value, 0)
  return [
    {
      says: say`take ${inCount(plugs)} ${plugs === 1 ? 'plug' : 'plugs'} out of ${all}, tip the craft so that the holes look down, and pull the cord ${inCount(10)} times, slowly, until no more water comes`,
      minutes: 5 + 5 * pistons.length,
    },
    {
      says: say`drain the crankcase of ${all}: by its screw where it has one, else plug hole down and the piston at the bottom for ${inMinutes(300)}`,
      minutes: 5 * pistons.length,
    },
  ]
}

function exhaustSteps(pistons: readonly { e: Piston; name: string }[]): Step[] {
  return pistons.map(({ e, name }): Step => {
    const holds = exhaustHolds(e)
    const outlet = e.kind === 'two-stroke' ? e.exhaust?.outlet : undefined
    return {
      says: say`empty the exhaust of ${name}${holds > 0 ? say`: pipe and muffler hold up to ${inLitres(holds)}` : ''}, ${outlet?.drain ? 'by its drain, then' : 'by taking it off or'} standing the craft on its stern`,
      minutes: outlet?.drain ? 4 : 12,
    }
  })
}

function intakeSteps(pistons: readonly { e: Piston; name: string }[]): Step[] {
  return pistons.map(({ e, name }): Step => {
    const box = e.snorkel?.box.value ?? 0
    return {
      says: say`drain the bowl and blow through the jets of ${name}; ${e.snorkel ? say`empty its air tube${box > 0 ? say` and the ${inLitres(box)} of its air box` : ''}` : 'wring out and dry its filter'}`,
      minutes: 10,
    }
  })
}

function fuelSteps(craft: Craft): Step[] {
  return craft.tanks
    .filter((t) => /petrol/.test(t.holds))
    .map((t): Step => {
      const liquid = tankLiquid(t).value
      return t.sealed
        ? {
            says: say`${t.name}: draw ${inLitres(0.1e-3, 0.1)} from its lowest place into a glass and wait ${inMinutes(600)}; water lies under the petrol, and then all of it comes out`,
            minutes: 12,
          }
        : {
            says: say`${t.name}: it is not sealed; drain the ${inLitres(liquid)}, let them stand, and fill fresh mixture through a fine sieve; the lines likewise`,
            minutes: 20,
          }
    })
}

function boxSteps(craft: Craft): Step[] {
  const boxes = craft.weights
    .filter((w) => /batter|box|reader|electr|controller/i.test(w.name))
    .map((w) => w.name)
  const foams = craft.foam.map((f) => f.foam).filter((f, i, list) => list.indexOf(f) === i)
  return [
    {
      says: say`open and dry ${boxes.length > 0 ? boxes.join(', ') : 'switches and plugs'}; work the kill cord and the throttle until they move as before`,
      minutes: 8 + 4 * boxes.length,
    },
    ...(foams.length > 0
      ? [
          {
            says: say`press on the ${joined(
              foams.map((f) => say`${f}`),
              ' and ',
            )}: what weeps has soaked; weigh the craft before it goes out again`,
            minutes: 8,
          },
        ]
      : []),
  ]
}

function lastSteps(pistons: readonly { e: Piston; name: string }[], all: string): Step[] {
  const oil = pistons.reduce((sum, { e }) => sum + 0.1 * volumeOf(e), 0)
  return [
    {
      says: say`pour ${inCm3(oil)} of premix oil altogether through the plug holes and carburettors of ${all} and turn them ${inCount(10)} times`,
      minutes: 3 * pistons.length,
    },
    {
      says: say`dry or new plugs, fresh mixture, air the bay, start within ${inMinutes(180 * 60, 30)} and let it run warm for ${inMinutes(600)} tied up: bearings that stay wet overnight are lost`,
      minutes: 15,
    },
  ]
}

/** The steps as a card for this craft. */
export function dunkingCard(inputs: Pick<BayInputs, 'craft'>): Card {
  const steps = dunkingSteps(inputs)
  const minutes = steps.reduce((sum, s) => sum + s.minutes, 0)
  return {
    id: 'dunking',
    title: 'After a dunking',
    says: say`${inCount(steps.length)} steps, about ${inMinutes(60 * minutes, 5)}`,
    steps: steps.map((s) => whole(say`${s.says} (${inMinutes(60 * s.minutes)})`)),
  }
}
