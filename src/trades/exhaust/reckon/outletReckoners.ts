/** Reckoners of pressure, of the outlet at the water and of the air intake. */
import {
  celsius,
  choice,
  degrees,
  grams,
  gramsPerSecond,
  hertz,
  kPa,
  litres,
  metres,
  metresPerSecond,
  mm,
  pascals,
  percent,
  revsPerMinute,
} from '../../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../../base/answers/reckoner.ts'
import { snorkelDrop, snorkelResonance } from '../airIntake.ts'
import { boxPressure, exhaustGas, tubeDrop } from '../backPressure.ts'
import { drawnIn, flapOpening, quenched, suctionLift } from '../outlet.ts'

const naca = 'Isentropic nozzle flow, NACA Report 1135 (1953)'
const miller = 'D. S. Miller, Internal Flow Systems (1978), loss factors from memory'
const flow = gramsPerSecond('flow', 'mean mass flow of gas', 1e-4, 0.5)
const gasT = (assumed: number) => celsius('temperature', 'of the gas', 280, 1400, assumed)
const coldT = celsius('cold', 'after cooling', 273, 320, 290)

/** Reckoners of pressures and water. */
export const outletReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'box-pressure',
    title: 'Pressure that an outlet holds in its box',
    trade: 'exhaust',
    says: 'Steady flow through the outlet of a muffler. About one part in a hundred of torque goes for each kPa. Says so when the outlet cannot pass the flow at fifty times the air’s pressure.',
    inputs: [
      flow,
      gasT(790),
      mm('bore', 'of the outlet', 0.004, 0.15),
      {
        name: 'discharge',
        says: 'coefficient; 0.8 for a plain tube end',
        kind: 'ratio',
        unit: '',
        min: 0.4,
        max: 1,
        assumed: 0.8,
      },
    ],
    outputs: [
      kPa('gauge', 'in the box, over the air'),
      percent('torqueLost', 'part of torque that costs, about'),
    ],
    reckon: (g) => {
      const outside = 101325
      const solved = boxPressure({
        massFlow: g.flow,
        temperature: g.temperature,
        area: g.discharge * (Math.PI / 4) * g.bore ** 2,
        outside,
      })
      if (!solved.converged) throw new RangeError('bore: too small to pass this flow')
      const gauge = solved.value - outside
      return { gauge, torqueLost: Math.min(1, gauge / 1e5) }
    },
    sources: [naca, 'loss of torque: this project’s own simulation of a 125 cm³ engine'],
  }),
  defineReckoner({
    id: 'tube-drop',
    title: 'Pressure drop of a stinger or an outlet tube',
    trade: 'exhaust',
    says: 'Steady flow with friction, entry and exit. Above a third of the speed of sound it is too low; a tube that chokes is refused.',
    inputs: [
      flow,
      gasT(800),
      mm('bore', 'of the tube', 0.004, 0.15),
      mm('length', 'of the tube', 0, 3),
      {
        name: 'losses',
        says: 'loss factors added up: exit 1, sharp entry 0.5, belled 0.05, sharp right angle 1.1',
        kind: 'ratio',
        unit: '',
        min: 0,
        max: 20,
        assumed: 1.5,
      },
    ],
    outputs: [
      kPa('drop', 'along the tube'),
      metresPerSecond('velocity', 'of the gas'),
      { name: 'mach', says: 'velocity over speed of sound', kind: 'ratio', unit: '' },
    ],
    reckon: (g) => {
      const d = tubeDrop({
        massFlow: g.flow,
        temperature: g.temperature,
        pressure: 101325,
        bore: g.bore,
        length: g.length,
        losses: g.losses,
      })
      if (d.choked) throw new RangeError('bore: the tube chokes at this flow')
      return { drop: d.drop, velocity: d.velocity, mach: d.mach }
    },
    sources: [miller, 'Blasius friction'],
  }),
  defineReckoner({
    id: 'flap-opening',
    title: 'What it takes to open a rubber flap',
    trade: 'exhaust',
    says: 'Pressure that lifts a flap hinged at its top. A box at idle has only 200 to 500 Pa. A flap is a splash guard, not a seal.',
    inputs: [
      mm('depth', 'middle of the hole under the water, 0 when above', 0, 1, 0),
      mm('bore', 'of the hole', 0.005, 0.15),
      mm('arm', 'hinge to the middle of the hole', 0.005, 0.3),
      grams('mass', 'of the flap', 0, 1, 0.01),
      degrees('lean', 'how far it hangs off the upright when shut', 0, Math.PI / 2, 0.35),
    ],
    outputs: [pascals('pressure', 'that opens it')],
    reckon: (g) => ({
      pressure: flapOpening(
        {
          area: (Math.PI / 4) * g.bore ** 2,
          arm: g.arm,
          weightMoment: g.mass * 9.80665 * g.arm * Math.sin(g.lean),
          elasticMoment: 0,
        },
        g.depth,
      ),
    }),
    sources: ['Hydrostatics'],
  }),
  defineReckoner({
    id: 'shut-down-suction',
    title: 'Water a cooling pipe draws in',
    trade: 'exhaust',
    says: 'With the outlet under water and no vent, the gas in pipe and box shrinks as it cools and water takes its place; the lift is far above any freeboard. A 3 to 4 mm vent at the high point prevents it.',
    inputs: [
      litres('volume', 'of pipe and box', 1e-4, 0.1),
      { ...gasT(700), name: 'hot', says: 'mean of the gas when stopped' },
      coldT,
    ],
    outputs: [
      litres('drawn', 'water drawn in at most'),
      percent('share', 'part of the volume'),
      metres('lift', 'height it could be lifted'),
    ],
    reckon: (g) => {
      const share = drawnIn(g.hot, g.cold)
      return { drawn: share * g.volume, share, lift: suctionLift(g.hot, g.cold) }
    },
    sources: ['Ideal gas at constant pressure; hydrostatics'],
    cautions: [
      'Water that reaches the cylinder locks the engine: turn it over with the plug out before starting again.',
    ],
  }),
  defineReckoner({
    id: 'water-quench',
    title: 'How far injected water cools exhaust gas',
    trade: 'exhaust',
    says: 'All of the water evaporated at 100 °C into the gas. Inject behind the stinger only: in the pipe the sound slows and the tuned speed falls with it.',
    inputs: [flow, gasT(790), gramsPerSecond('water', 'injected', 0, 0.2)],
    outputs: [
      celsius('after', 'temperature after'),
      percent('tuning', 'tuned speed over that of dry gas, were it done in the pipe'),
    ],
    reckon: (g) => {
      const after = quenched(g.flow, g.temperature, g.water)
      return { after, tuning: Math.sqrt(after / g.temperature) }
    },
    sources: [
      `Energy balance, gas γ ${exhaustGas.gamma}, R ${exhaustGas.gasConstant} J/(kg·K); latent heat 2.257 MJ/kg`,
    ],
  }),
  defineReckoner({
    id: 'snorkel-drop',
    title: 'What an air intake tube costs',
    trade: 'exhaust',
    says: 'Pressure drop of a tube that brings air down from the handle, gulps of the engine counted, and the part of the charge it costs.',
    inputs: [
      mm('bore', 'of the tube', 0.005, 0.15),
      mm('length', 'of the tube', 0.02, 4),
      { name: 'bends', says: 'right angles in all', kind: 'ratio', unit: '', min: 0, max: 12, assumed: 2 },
      choice('shape', 'of the bends', ['smooth', 'mitred']),
      choice('inside', 'of the tube', ['smooth', 'corrugated']),
      litres('box', 'air box; 0 without', 0, 0.05, 0),
      gramsPerSecond('air', 'mean mass flow of air', 1e-4, 0.3),
      revsPerMinute('rotation', 'of the engine', 10, 400),
      {
        name: 'cylinders',
        says: 'that breathe through it',
        kind: 'count',
        unit: '',
        min: 1,
        max: 4,
        assumed: 1,
      },
    ],
    outputs: [
      pascals('drop', 'of pressure, mean'),
      percent('deliveryLost', 'part of the charge'),
      metresPerSecond('velocity', 'in the tube, mean'),
      hertz('resonance', 'of tube and box; 0 without a box'),
    ],
    reckon: (g, words) => {
      const box = g.box
      const d = snorkelDrop(
        {
          bore: g.bore,
          length: g.length,
          bends: g.bends,
          smoothBends: words.shape === 'smooth',
          belledEntry: false,
          roughness: words.inside === 'smooth' ? 1.5e-6 : 2e-3,
          box,
        },
        {
          massFlow: g.air,
          rotation: g.rotation,
          cylinders: g.cylinders,
          pressure: 101325,
          temperature: 293.15,
        },
      )
      return {
        drop: d.drop,
        deliveryLost: d.deliveryLost,
        velocity: d.velocity,
        resonance: box > 0 ? snorkelResonance(g.bore, g.length, box) : 0,
      }
    },
    sources: ['S. E. Haaland, J. Fluids Eng. 105 (1983) 89', miller],
  }),
]
