/** How each ring sits, what the liquid does to it, and whether layer lines leak past it. */
import { inCm3, inMm, inMpa, inPercent, inTorque, withEnds } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Printer, PrintMaterial } from './printerOf.ts'
import { type NeckAnswer, type PrintsAnswer, type SealAnswer, wall } from './printsAnswer.ts'
import { findingsBy, fine } from './printsFinding.ts'
import type { PrintsInputs } from './printsFromCraft.ts'
import { chooseRing, drawnGroove, isNoRing, type SeatedRing } from './ringChoice.ts'
import { sealDataOf } from './sealMaterials.ts'
import type { PrintsLimits } from './threadLimits.ts'
import { handTorque } from './threadPrinted.ts'

const sources = [
  'AS568 and ISO 3601-1: sizes of O-rings; gland rules of seal makers, from memory',
  'K. L. Johnson, Contact Mechanics (1985): wavy surfaces, from memory',
]

const finding = findingsBy(sources)

const part = (r: Range) => withEnds(inPercent(r.value), r)
const seatWord = { face: 'between its faces', plug: 'round its plug' } as const

/** A ring of the wrong rubber. */
function rubberFinding(s: SealAnswer): Finding[] {
  const data = sealDataOf(s.asked.material)
  if (s.liquid === 'water' || data.bearsPetrol) return []
  const size = s.seated ? say`${s.seated.ring.name} of FKM` : 'a ring of FKM'
  return [
    finding(`rubber.${s.path}`, {
      says: say`The ${s.asked.material} ring of ${s.name} swells by ${inPercent(data.petrol.value)} in petrol and lets go: vapour leaks.`,
      standing: 'stop',
      because: [{ says: `the ring is of ${s.asked.material}`, link: s.asked.path }],
      act: say`fit ${size} before petrol goes in`,
      harm: 'before the water',
    }),
  ]
}

function noneFinding(s: SealAnswer, printer: Printer): Finding[] {
  const { none, asked, room } = s
  if (asked.wrong !== undefined)
    return [
      finding(`ring.${s.path}`, {
        says: say`The ring of ${s.name} is none: ${asked.wrong}.`,
        standing: 'watch',
        because: [{ says: 'its size as written', link: asked.path }],
        act: say`write its dash size, or its inside and section, as a caliper tells them to ${inMm(1e-4, 0.1)}`,
        harm: 'comfort',
      }),
    ]
  if (!none) return []
  const plug = asked.seat === 'plug'
  const written = asked.ring !== undefined
  const free = chooseRing({
    kind: asked.seat,
    ...room,
    wall,
    swell: s.swell,
    printer,
  })
  const instead = isNoRing(free) ? undefined : free
  const value = fine(none.value)
  const limit = fine(none.limit)
  return [
    finding(`ring.${s.path}`, {
      says: written
        ? say`${asked.ring!.name} cannot be fitted to ${s.name}: its inside of ${value} against ${limit} of ${plug ? 'the groove’s floor' : 'room outside'}.`
        : say`No ring of the table goes ${plug ? 'into' : 'on'} ${s.name}: ${plug ? 'a bore' : 'an outside'} of ${value} is less than the ${limit} one wants.`,
      standing: 'watch',
      because: [
        {
          says: plug
            ? say`a bore of ${fine(room.outer)}`
            : say`a face from ${fine(room.inner)} to ${fine(room.outer)} across`,
          link: written ? asked.path : s.path,
        },
      ],
      act: instead
        ? say`take ${instead.ring.name}, ${fine(instead.ring.inside)} inside and ${fine(instead.ring.section)} thick`
        : say`cut a flat washer of petrol-proof rubber ${fine(Math.max(1e-3, (room.outer - room.inner) / 2))} wide and ${inMm(2.5e-3, 0.1)} thick for it`,
      harm: 'comfort',
    }),
  ]
}

/** Squeeze, fill and stretch of a ring that has a place. */
function glandFinding(s: SealAnswer, seated: SeatedRing, limits: PrintsLimits, printer: Printer): Finding {
  const { ring, gland, state } = seated
  const { squeeze, fill, stretch } = state
  const most = s.asked.seat === 'plug' ? limits.squeezePlug.value : limits.squeezeFace.value
  const groove = drawnGroove(s.asked.seat, ring, s.swell, printer)
  const ringGiven = {
    says: say`${ring.name}, ${fine(ring.inside)} inside and ${fine(ring.section)} thick, of ${s.asked.material}`,
    link: s.asked.path,
  }
  const swollen = { says: say`swollen by up to ${inPercent(s.swell)}` }
  const grooveGiven = {
    says: say`a groove ${fine(gland.depth)} deep and ${fine(gland.width)} wide`,
    link: s.asked.path,
  }
  const bad = (says: Finding['says'], act: Finding['says'], value: Range): Finding =>
    finding(`gland.${s.path}`, {
      says,
      value: value.value,
      low: value.low,
      high: value.high,
      unit: '1',
      standing: 'watch',
      because: [ringGiven, grooveGiven, swollen],
      act,
      harm: s.liquid === 'water' ? 'comfort' : 'before the water',
    })
  if (squeeze.low < limits.squeezeLeast.value)
    return bad(
      say`The ring of ${s.name} is squeezed by ${part(squeeze)} ${seatWord[s.asked.seat]}: at its least it weeps.`,
      s.asked.depth !== undefined && gland.depth > groove.depth * 1.02
        ? say`make its groove ${fine(groove.depth)} deep`
        : say`hold the depth of its groove to ${fine(groove.depth)} and dress its floor, or take a ring thicker than ${fine(ring.section)}`,
      squeeze,
    )
  if (squeeze.high > most)
    return bad(
      say`The ring of ${s.name} is squeezed by ${part(squeeze)} ${seatWord[s.asked.seat]}: at its most it is cut or takes a set.`,
      say`make its groove ${fine(groove.depth)} deep`,
      squeeze,
    )
  if (fill.high > limits.fill.value)
    return bad(
      say`The ring of ${s.name} fills its groove by ${part(fill)} once it has swollen: it has nowhere to go and tears.`,
      say`make its groove ${fine((gland.width * fill.high) / limits.fill.value)} wide`,
      fill,
    )
  if (stretch.value > limits.stretch.value)
    return bad(
      say`The ring of ${s.name} is stretched by ${part(stretch)}: it ages fast.`,
      say`take a ring of ${inMm(gland.seat / 1.02, 0.1)} inside`,
      stretch,
    )
  if (stretch.value < -limits.crowded.value)
    return bad(
      say`The ring of ${s.name} is crowded together by ${inPercent(-stretch.value, 0.1)}: it will not lie flat.`,
      say`take a ring of ${inMm(ring.inside * (1 + stretch.value), 0.1)} inside`,
      { value: -stretch.value, low: -stretch.high, high: -stretch.low },
    )
  return finding(`gland.${s.path}`, {
    says: say`${ring.name} seals ${s.name} in a groove ${fine(gland.depth)} deep and ${fine(gland.width)} wide: squeezed by ${part(squeeze)}, its groove filled by ${inPercent(fill.high)} at most.`,
    value: squeeze.value,
    low: squeeze.low,
    high: squeeze.high,
    unit: '1',
    standing: 'good',
    because: [ringGiven, swollen],
  })
}

/** A lid that no hand turns down on its ring. */
function turnFinding(s: SealAnswer, { ring, state }: SeatedRing, limits: PrintsLimits): Finding[] {
  if (!s.turned) return []
  const { torque, diameter } = s.turned
  const most = handTorque(diameter, limits.handTorque.value)
  if (torque <= most) return []
  return [
    finding(`turn.${s.path}`, {
      says: say`It takes ${inTorque(torque)} to close ${s.name} on ${ring.name}, and hands give about ${inTorque(most)}: it stays half shut.`,
      value: torque,
      unit: 'N·m',
      standing: 'watch',
      because: [
        {
          says: say`a ring ${fine(ring.section)} thick squeezed by ${part(state.squeeze)}`,
          link: s.asked.path,
        },
        { says: say`a thread ${inMm(diameter)} across, greased`, link: s.path },
      ],
      act:
        ring.section > 2e-3
          ? say`take a ring of ${fine(1.78e-3)} section, or seal it round a plug`
          : say`give the lid two grips for a bar of ${inMm(0.3)}, and grease thread and ring`,
      harm: 'comfort',
    }),
  ]
}

/** Layer lines that run from inside to outside under the ring. */
function lineFinding(s: SealAnswer, seated: SeatedRing, limits: PrintsLimits): Finding[] {
  const { across } = s
  if (!across || across.leak <= limits.leak.value) return []
  return [
    finding(`lines.${s.path}`, {
      says: say`Layer lines run across the seat of ${s.name} and leak past the ring: about ${inCm3(across.leak * 60, 0.1)} a minute under test pressure, as they would take ${inMpa(across.needed, 0.1)} to fill and the ring presses with ${inMpa(across.pressure, 0.1)}.`,
      value: across.leak,
      unit: 'm³/s',
      standing: s.liquid === 'water' ? 'watch' : 'stop',
      because: [
        { says: 'lines of layers run across the ring', link: s.asked.path },
        { says: say`${seated.ring.name} squeezed by ${part(seated.state.squeeze)}` },
      ],
      act: say`print it again with its seat flat on the bed and its axis upright, or sand the seat to 400 grit and coat it twice`,
      harm: s.liquid === 'water' ? 'comfort' : 'before the water',
    }),
  ]
}

/** plastics that petrol cracks or softens, and those that stand it: makers' data, from memory */
const inPetrol: Readonly<Record<PrintMaterial, 'bears' | 'softens' | 'fails'>> = {
  PA12: 'bears',
  'PA12-CF': 'bears',
  POM: 'bears',
  PVDF: 'bears',
  HDPE: 'softens',
  PETG: 'softens',
  PLA: 'fails',
  ABS: 'fails',
  ASA: 'fails',
  PC: 'fails',
  resin: 'fails',
}

/** A printed cap in petrol. */
function capFinding({ neck }: NeckAnswer, { printer }: PrintsInputs): Finding[] {
  if (!neck.printed || neck.liquid === 'water') return []
  const how = inPetrol[printer.material]
  if (how === 'bears') return []
  return [
    finding(`plastic.${neck.path}`, {
      says:
        how === 'fails'
          ? say`A cap of ${printer.material} does not stand petrol: it cracks or dissolves under ${neck.name}’s vapour.`
          : say`A cap of ${printer.material} softens and grows in petrol within a season: its thread binds on ${neck.name} and its seat creeps.`,
      standing: how === 'fails' ? 'stop' : 'watch',
      because: [{ says: `parts are printed of ${printer.material}`, link: 'printer.material' }],
      act:
        how === 'fails'
          ? say`print the cap of ${neck.name} in PA12 or POM with a wall of ${inMm(3e-3)}, or buy one`
          : say`print the cap of ${neck.name} in PA12 or POM with a wall of ${inMm(3e-3)} and keep a bought one by`,
      harm: how === 'fails' ? 'before the water' : 'will stop the run',
    }),
  ]
}

/** A face-sealed neck whose bore nobody measured. */
function boreFinding({ neck, seal, thread }: NeckAnswer): Finding[] {
  if (seal || !thread || neck.bore !== undefined || neck.reading.side === 'internal') return []
  return [
    finding(`gland.${neck.path}`, {
      says: say`Which ring seals the cap of ${neck.name} is not known: the file does not say how wide its mouth is.`,
      standing: 'unknown',
      because: [
        { says: say`the root of its thread is ${fine(thread.d1)} across`, link: `${neck.path}.over crests` },
      ],
      measureNext: {
        what: 'measure across the inside of the neck at its mouth',
        with: 'caliper',
        minutes: 1,
        path: `${neck.path}.bore`,
      },
    }),
  ]
}

/** Findings of seals. */
export function sealFindings(inputs: PrintsInputs, answer: PrintsAnswer, limits: PrintsLimits): Finding[] {
  const seals = [
    ...answer.necks.flatMap((n) => (n.seal ? [n.seal] : [])),
    ...answer.hatches.map((h) => h.seal),
  ]
  return [
    ...answer.necks.flatMap((n) => [...capFinding(n, inputs), ...boreFinding(n)]),
    ...seals.flatMap((s) => [
      ...rubberFinding(s),
      ...noneFinding(s, inputs.printer),
      ...(s.seated && s.asked.wrong === undefined
        ? [
            glandFinding(s, s.seated, limits, inputs.printer),
            ...turnFinding(s, s.seated, limits),
            ...lineFinding(s, s.seated, limits),
          ]
        : []),
    ]),
  ]
}
