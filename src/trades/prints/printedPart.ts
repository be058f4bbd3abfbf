/** One part to print: what every one of them has, from its order, its place in the craft and the printer. SI. */
import { inCm3, inKg, inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart, SolidOrder } from '../../base/answers/madePart.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { PartLimits } from './partLimits.ts'
import { type PartLoad, strengthFinding } from './partStrength.ts'
import type { Printer, PrintMaterial } from './printerOf.ts'
import { petrolProof, printEstimate, printPlastics } from './printPlastics.ts'

export interface PartPlan {
  id: string
  title: string
  of: readonly string[]
  order: SolidOrder
  says: Sentence
  material: PrintMaterial
  /** m³ of plastic, roughly; its mesh tells to the cubic millimetre */
  volume: number
  /** along, across, up, as it is printed; m */
  size: readonly [number, number, number]
  /** how it lies on the bed, and why */
  lies: Sentence
  /** thinnest wall it is drawn with, m */
  wall: number
  steps?: readonly Sentence[]
  cautions?: readonly string[]
  findings?: readonly Finding[]
  petrol?: true
  /** stands in the warm bay */
  warm?: true
  /** what asks it where it is weakest; absent where it carries nothing worth reckoning */
  load?: PartLoad
  /** minutes of hands-on work after printing */
  fitting?: number
}

/** A finding about one part. */
const partFinding = (
  part: Pick<PartPlan, 'id' | 'of'>,
  name: string,
  f: Pick<Finding, 'says' | 'standing'> & Partial<Finding>,
): Finding => ({
  id: `prints.part.${part.id}.${name}`,
  question: 'make',
  because: part.of.map((link) => ({ says: 'what it is made from', link })),
  sources: ['judgement of printed parts'],
  ...f,
})

function wrongWith(p: PartPlan, printer: Printer, limits: PartLimits): Finding[] {
  const out: Finding[] = [...(p.findings ?? [])]
  if (p.load) out.push(strengthFinding(p, p.load, limits))
  const plastic = printPlastics[p.material]
  const least = limits.lines.value * printer.line
  if (p.wall < least)
    out.push(
      partFinding(p, 'wall', {
        standing: 'stop',
        says: say`${p.title}: its thinnest wall of ${inMm(p.wall, 0.01)} is less than the ${inMm(least, 0.01)} of the lines it needs, and will leak or break.`,
        act: say`print it with a nozzle of at most ${inMm(printer.nozzle * (p.wall / least), 0.01)}`,
        because: [{ says: say`a laid line is ${inMm(printer.line, 0.01)} wide`, link: 'printer.nozzle' }],
      }),
    )
  const over = p.size.map((s, i) => s / printer.bed[i]!)
  const worst = over.indexOf(Math.max(...over))
  if (over[worst]! > 1)
    out.push(
      partFinding(p, 'bed', {
        standing: 'watch',
        says: say`${p.title} is ${inMm(p.size[worst]!)} long, more than the bed's ${inMm(printer.bed[worst]!)}: it comes in pieces with holes for dowels.`,
        act: say`glue the pieces on dowels of ${inMm(5e-3)} and let them cure for a day before any load`,
        because: [{ says: say`bed of ${inMm(printer.bed[worst]!)}`, link: 'printer.bed' }],
      }),
    )
  if (p.petrol && plastic.petrol !== 'bears')
    out.push(
      partFinding(p, 'petrol', {
        standing: plastic.petrol === 'attacked' ? 'stop' : 'watch',
        says: say`${p.title} lies in petrol, and ${p.material} ${plastic.petrol === 'attacked' ? 'is attacked by it' : 'bears a splash of it, not a soaking'}.`,
        act: say`print it of ${petrolProof[0]!} in layers of ${inMm(printer.layer, 0.01)}`,
        because: [{ says: say`${p.material}`, link: 'printer.material' }],
        harm: 'before the water',
      }),
    )
  if (p.warm && plastic.service < limits.warm.value)
    out.push(
      partFinding(p, 'warm', {
        standing: 'watch',
        says: say`${p.title} stands in the warm bay, and ${p.material} creeps there.`,
        act: say`print it of ${petrolProof[0]!}, or check its screws after each run`,
        because: [{ says: say`${p.material}`, link: 'printer.material' }],
      }),
    )
  return out
}

/** Half an hour of looking after the printer, and the fitting. */
export function printedPart(p: PartPlan, printer: Printer, limits: PartLimits): MadePart {
  const { mass, low, high } = printEstimate(p.volume, p.material, printer)
  const fit = 60 * (p.fitting ?? 10)
  const values = { ...p.order.values }
  return {
    id: p.id,
    title: p.title,
    of: p.of,
    how: 'print',
    says: p.says,
    material: p.material,
    mass,
    hours: [
      { work: 'print', low, high },
      { work: 'fit', low: 0.5 * fit, high: 2 * fit },
    ],
    steps: [
      p.lies,
      say`Print it solid, in layers of ${inMm(printer.layer, 0.01)}: about ${inCm3(p.volume)} of ${p.material}, ${inKg(mass, 0.001)}.`,
      ...(p.steps ?? []),
    ],
    cautions: [
      'Fumes of the printer: open a window. Dust of sanding: wear a mask.',
      'Look at a printed part before every outing: white lines are the beginning of a crack; then it goes to the bin.',
      ...(p.cautions ?? []),
    ],
    findings: wrongWith(p, printer, limits),
    solid: { shape: p.order.shape, values },
    madeFrom: JSON.stringify([p.material, p.order.shape, values]),
  }
}
