import {
  choice,
  degrees,
  grams,
  megapascals,
  mm,
  newtonMetres,
  newtons,
  percent,
  portOf,
  ratio,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { freshWaterDensity } from '../../../physics/fluid/water.ts'
import { bladeLoad, centrifugalStress, rotorAxialThrust, unbalanceAllowed } from '../bladeStrength.ts'
import {
  carterDeviation,
  incidenceSlope,
  referenceDeviation10,
  referenceIncidence10,
  thicknessOnDeviation,
  thicknessOnIncidence,
} from '../cascade.ts'
import { inducerGapHead, inducerGapSuction } from '../cavitation.ts'
import { angleAt, equivalentPitch, pitchAt } from '../ideal.ts'
import type { RotorGeometry } from '../jetTypes.ts'
import { turningShare } from '../lattice.ts'
import { annulusOf, port } from './jetPorts.ts'

const degree = Math.PI / 180
const radius = mm('radius', 'distance from the shaft’s axis to where the angle is read', 5e-3, 0.2)
const helix = 'Geometry of a helix: P = 2πr tan β'

/** A rotor of one pitch whose edges, gap and finish do not matter here. */
function plainRotor(bore: number, hub: number, blades: number, pitch: number, wrap: number): RotorGeometry {
  return {
    tipDiameter: bore,
    hubDiameter: hub,
    blades,
    pitchLeading: pitch,
    pitchTrailing: pitch,
    wrap,
    trailingEdge: 0,
    leadingEdgeRadius: 0,
    gap: 0,
    roughness: 0,
  }
}

/** Reckoners about blades: shape, loading, strength. */
export const bladeReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'pitch-from-angle',
    title: 'Pitch from a protractor reading',
    trade: 'jet',
    says: 'Pitch of a blade whose face stands at an angle to the plane of rotation, read at a known radius. Reading at the wrong radius is the usual mistake: a screw has a different angle at each.',
    inputs: [radius, degrees('angle', 'blade face to the plane of rotation', 1 * degree, 80 * degree)],
    outputs: [mm('pitch', 'advance in one turn'), mm('perDegree', 'pitch gained by one degree more')],
    reckon: ({ radius, angle }) => ({
      pitch: pitchAt(radius, angle),
      perDegree: pitchAt(radius, angle + degree) - pitchAt(radius, angle),
    }),
    sources: [helix],
  }),
  defineReckoner({
    id: 'angle-from-pitch',
    title: 'Blade angle from pitch',
    trade: 'jet',
    says: 'The protractor reading that a pitch should give at a radius.',
    inputs: [radius, port.pitch],
    outputs: [degrees('angle', 'blade face to the plane of rotation')],
    reckon: ({ radius, pitch }) => ({ angle: angleAt(radius, pitch) }),
    sources: [helix],
  }),
  defineReckoner({
    id: 'progressive-pitch',
    title: 'Pitch number of a blade that gets steeper',
    trade: 'jet',
    says: 'The constant pitch that would load the engine the same as a blade whose pitch grows from its leading to its trailing edge. Within 1 % of the strip model for growth up to 1.35.',
    inputs: [
      mm('leading', 'pitch at the leading edge', 0.01, 0.8),
      mm('trailing', 'pitch at the trailing edge', 0.01, 0.8),
    ],
    outputs: [mm('pitch', 'constant pitch of the same torque')],
    reckon: ({ leading, trailing }) => ({ pitch: equivalentPitch(leading, trailing) }),
    sources: ['Fit to the strip model of this project, weights 0.06 and 0.94'],
  }),
  defineReckoner({
    id: 'blade-overlap',
    title: 'Overlap, solidity and blockage of an impeller',
    trade: 'jet',
    says: 'How much the blades overlap, how much of the ideal turning such a row gives, and how much of the way out thick trailing edges block. Below a solidity of 0.8 the head falls fast; above 1.2 nothing is gained.',
    inputs: [
      port.blades,
      port.wrap,
      port.pitch,
      mm('diameter', 'where it is asked for: the bore for the tip, the hub for the root', 0.01, 0.4),
      mm('edge', 'thickness of the trailing edge', 1e-4, 0.01, 1.5e-3),
    ],
    outputs: [
      ratio('overlap', 'wrap of all blades over a full turn'),
      mm('chord', 'blade length from edge to edge'),
      ratio('solidity', 'chord over blade spacing'),
      percent('turning', 'share of full turning, ideal flow'),
      percent('open', 'open share beside the trailing edges'),
    ],
    reckon: ({ blades, wrap, pitch, diameter, edge }) => {
      const r = diameter / 2
      const chord = Math.hypot((pitch * wrap) / (2 * Math.PI), r * wrap)
      const solidity = (blades * chord) / (2 * Math.PI * r)
      const lambda = Math.atan2(2 * Math.PI * r, pitch)
      return {
        overlap: (blades * wrap) / (2 * Math.PI),
        chord,
        solidity,
        turning: turningShare(solidity, lambda),
        open: Math.max(0, 1 - (blades * edge) / (2 * Math.PI * r * Math.cos(lambda))),
      }
    },
    sources: ['F. Weinig, Die Strömung um die Schaufeln von Turbomaschinen (1935)', helix],
  }),
  defineReckoner({
    id: 'tip-gap',
    title: 'What a tip gap may cost',
    trade: 'jet',
    says: 'The pessimistic bracket used for pump inducers: head and suction performance left by a gap. The strip model gives a third of it for small axial jets.',
    inputs: [mm('gap', 'radial clearance at the tip', 2e-5, 5e-3), port.bore, port.hub],
    outputs: [
      percent('share', 'gap over blade height'),
      percent('headLeft', 'head left'),
      percent('suctionLow', 'suction specific speed left, worse end'),
      percent('suctionHigh', 'suction specific speed left, better end'),
    ],
    reckon: ({ gap, bore, hub }) => {
      annulusOf(bore, hub)
      const share = (2 * gap) / (bore - hub)
      if (share > 0.2) throw new RangeError(`gap ${gap} m is more than a fifth of the blade height`)
      return {
        share,
        headLeft: inducerGapHead(share),
        suctionLow: inducerGapSuction(share, 0.65),
        suctionHigh: inducerGapSuction(share, 0.5),
      }
    },
    sources: ['NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971), eqs 54-55'],
  }),
  defineReckoner({
    id: 'blade-row-deviation',
    title: 'Incidence and deviation of a cambered blade row',
    trade: 'jet',
    says: 'Classical rules for compressor-like blades, useful for stator vanes. Not for screws without camber.',
    inputs: [
      degrees('inlet', 'flow ahead of the row, from the axis', 20 * degree, 70 * degree),
      degrees('camber', 'turning of the blade’s camber line', 1 * degree, 50 * degree),
      ratio('solidity', 'chord over spacing', 0.5, 2, 1),
      percent('thickness', 'greatest thickness over chord', 0.03, 0.15, 0.1),
    ],
    outputs: [
      degrees('incidence', 'incidence of least loss'),
      degrees('deviation', 'deviation, Aungier'),
      degrees('deviationCarter', 'deviation, Carter with stagger near the inlet angle less half the camber'),
    ],
    reckon: ({ inlet, camber, solidity, thickness }) => {
      const b = inlet / degree
      const th = camber / degree
      const i =
        thicknessOnIncidence(thickness) * referenceIncidence10(b, solidity) + incidenceSlope(b, solidity) * th
      // slope of deviation over camber, SP-36 fit for circular arcs: m at solidity 1 over σ^b
      const x = b / 100
      const m = 0.249 + 0.074 * x - 0.132 * x ** 2 + 0.316 * x ** 3
      const power = 0.9625 - 0.17 * x - 0.85 * x ** 3
      const d =
        thicknessOnDeviation(thickness) * referenceDeviation10(b, solidity) + (m / solidity ** power) * th
      return {
        incidence: i * degree,
        deviation: d * degree,
        deviationCarter: carterDeviation(0.5, Math.max(0, b - th / 2), th, solidity) * degree,
      }
    },
    sources: [
      'R. H. Aungier, Axial-Flow Compressors (2003), ch. 6, fits of NASA SP-36 charts; the slope of deviation from memory',
      'A. D. S. Carter (1950), deviation rule',
    ],
  }),
  defineReckoner({
    id: 'blade-root-stress',
    title: 'Bending at the root of an impeller blade',
    trade: 'jet',
    says: 'Load on one blade and bending stress at its root, as a cantilever strip along the helix; right to about half. Corners at the edges see 1.5 times as much even with a good fillet.',
    inputs: [
      port.bore,
      port.hub,
      port.blades,
      port.pitch,
      port.wrap,
      mm('root', 'thickness of the blade at the hub', 1e-3, 0.04, 9e-3),
      port.torque,
      port.head,
      { ...port.rotation, assumed: 100 },
      portOf('density', 'g/cm³')('material', 'density of the blades', 500, 9000, 1270),
      port.water,
    ],
    outputs: [
      newtons('tangential', 'force across the blade'),
      newtons('axial', 'force along the shaft on one blade'),
      newtonMetres('moment', 'bending moment at the root'),
      megapascals('stress', 'bending stress'),
      megapascals('spin', 'pull of the spinning blade at its root'),
    ],
    reckon: ({ bore, hub, blades, pitch, wrap, root, torque, head, rotation, material, water }) => {
      annulusOf(bore, hub)
      const rotor = plainRotor(bore, hub, blades, pitch, wrap)
      const load = bladeLoad(rotor, torque, head, freshWaterDensity(water), root)
      return {
        tangential: load.tangential,
        axial: load.axial,
        moment: load.moment,
        stress: load.stress,
        spin: centrifugalStress(rotor, rotation, material),
      }
    },
    sources: ['Cantilever strip with the load at 70 % of the span, derived'],
    cautions: [
      'A printed impeller can burst: keep the ring and duct round it closed, never run it dry at speed, look at the roots for whitening before each run.',
    ],
  }),
  defineReckoner({
    id: 'rotor-axial-thrust',
    title: 'Axial pull of the impeller on its shaft',
    trade: 'jet',
    says: 'The forward pull that a thrust bearing must take; a two-stroke crankshaft must not.',
    inputs: [port.bore, port.hub, port.head, port.water],
    outputs: [newtons('pull', 'forward, on the shaft')],
    reckon: ({ bore, hub, head, water }) => {
      annulusOf(bore, hub)
      const rotor = plainRotor(bore, hub, 1, 0, 0)
      return { pull: rotorAxialThrust(rotor, head, freshWaterDensity(water)) }
    },
    sources: ['Nine tenths of the head as static pressure on the annulus: derived, ±20 %'],
  }),
  defineReckoner({
    id: 'balance-grade',
    title: 'Unbalance a rotor may keep',
    trade: 'jet',
    says: 'Residual unbalance for a balance grade. G 16 suits an impeller on its own bearings, G 6.3 a better one.',
    inputs: [
      grams('mass', 'of the rotor', 0.01, 20),
      port.rotation,
      choice('grade', 'balance grade', ['G 16', 'G 6.3', 'G 2.5', 'G 40']),
      mm('radius', 'where material comes off', 2e-3, 0.2, 0.02),
    ],
    outputs: [
      portOf('unbalance', 'g·mm')('unbalance', 'allowed'),
      portOf('length', 'µm')('offset', 'of the centre of mass'),
      grams('trim', 'mass at that radius worth the allowance'),
    ],
    reckon: ({ mass, rotation, radius }, words) => {
      const grade = Number.parseFloat(words.grade.slice(2)) * 1e-3
      const unbalance = unbalanceAllowed(grade, mass, rotation)
      return { unbalance, offset: unbalance / mass, trim: unbalance / radius }
    },
    sources: ['ISO 21940-11, balance quality grades, from memory'],
  }),
]
