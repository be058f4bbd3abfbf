import { defineReckoner, type Port, type Reckoner } from '../../base/answers/reckoner.ts'
import { dopplerFactor, passSpeed, soundSpeed } from './doppler.ts'
import { timedSpeed } from './pull.ts'
import {
  bladePassRate,
  firingRate,
  gasSoundSpeed,
  hannLobe,
  jitterLeft,
  quarterWave,
  rotationFrom,
  runDownHalf,
  slopeLimit,
  splitAt,
} from './relations.ts'

const rotation = {
  name: 'rotation',
  says: 'engine speed',
  kind: 'rotation',
  unit: 'rpm',
  min: 5,
  max: 500,
} as const satisfies Port
const cylinders = {
  name: 'cylinders',
  says: 'cylinders, firing equally spaced',
  kind: 'count',
  unit: '1',
  min: 1,
  max: 8,
  assumed: 1,
} as const satisfies Port
const strokes = {
  name: 'strokes',
  says: 'two-stroke or four-stroke',
  kind: 'choice',
  unit: '',
  choices: ['2', '4'],
} as const satisfies Port
const air = {
  name: 'air',
  says: 'temperature of the air',
  kind: 'temperature',
  unit: '°C',
  min: 243.15,
  max: 323.15,
  assumed: 293.15,
} as const satisfies Port
const kinematics =
  'Kinematics: one firing a turn (two-stroke) or every second turn (four-stroke) for each cylinder'
const pierce = 'A. D. Pierce, Acoustics (1981), section 9-1: moving source in still air'

const celsius = (kelvin: number) => kelvin - 273.15

/** Handbook questions about engines and their sound. */
export const soundReckoners: readonly Reckoner[] = [
  defineReckoner({
    id: 'pitch-of-rpm',
    title: 'Pitch of an engine at a speed',
    trade: 'sound',
    says: 'The firing frequency heard at an engine speed. Uneven firing adds lines at half of it.',
    inputs: [rotation, cylinders, strokes],
    outputs: [
      { name: 'firing', says: 'firings a second', kind: 'frequency', unit: 'Hz' },
      {
        name: 'half',
        says: 'line that appears when every second firing is weak',
        kind: 'frequency',
        unit: 'Hz',
      },
    ],
    reckon: ({ rotation: n, cylinders: c }, { strokes: s }) => {
      const firing = firingRate(n, c, Number(s))
      return { firing, half: firing / 2 }
    },
    sources: [kinematics],
  }),
  defineReckoner({
    id: 'rpm-of-pitch',
    title: 'Engine speed from a pitch',
    trade: 'sound',
    says: 'The speed at which an engine fires at the frequency heard; also the speed if the line heard is the second one.',
    inputs: [
      {
        name: 'firing',
        says: 'frequency of the line heard',
        kind: 'frequency',
        unit: 'Hz',
        min: 5,
        max: 2000,
      },
      cylinders,
      strokes,
    ],
    outputs: [
      { name: 'rotation', says: 'engine speed', kind: 'rotation', unit: 'rpm' },
      {
        name: 'ifSecond',
        says: 'engine speed if the line is twice the firing frequency',
        kind: 'rotation',
        unit: 'rpm',
      },
    ],
    reckon: ({ firing, cylinders: c }, { strokes: s }) => {
      const n = rotationFrom(firing, c, Number(s))
      return { rotation: n, ifSecond: n / 2 }
    },
    sources: [kinematics],
  }),
  defineReckoner({
    id: 'beat-of-engines',
    title: 'Beat of two engines',
    trade: 'sound',
    says: 'How often a second two engines at nearly the same speed swell and fade.',
    inputs: [
      rotation,
      { ...rotation, name: 'other', says: 'speed of the other engine' },
      {
        name: 'harmonic',
        says: 'line listened to, 1 = the lowest',
        kind: 'count',
        unit: '1',
        min: 1,
        max: 20,
        assumed: 1,
      },
    ],
    outputs: [{ name: 'beat', says: 'beats a second', kind: 'frequency', unit: 'Hz' }],
    reckon: ({ rotation: a, other, harmonic }) => ({ beat: Math.abs(a - other) * harmonic }),
    sources: ['Difference of two sines, any textbook of acoustics'],
  }),
  defineReckoner({
    id: 'doppler-rpm',
    title: 'Engine speed of a moving craft',
    trade: 'sound',
    says: 'What an engine really turns when the craft moves straight toward or away from the listener.',
    inputs: [
      { ...rotation, name: 'heard', says: 'engine speed as heard' },
      {
        name: 'closing',
        says: 'speed toward the listener, negative = away',
        kind: 'speed',
        unit: 'm/s',
        min: -40,
        max: 40,
      },
      air,
    ],
    outputs: [
      { name: 'rotation', says: 'engine speed', kind: 'rotation', unit: 'rpm' },
      { name: 'factor', says: 'heard over true', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ heard, closing, air: t }) => {
      const factor = dopplerFactor(closing, soundSpeed(celsius(t)))
      return { rotation: heard / factor, factor }
    },
    sources: [pierce],
  }),
  defineReckoner({
    id: 'pass-speed',
    title: 'Speed of a craft from its pitch before and after it passes',
    trade: 'sound',
    says: 'Boat speed from the fall in pitch as it goes by. Holds only while the engine keeps its speed, and for a pass close by.',
    inputs: [
      { name: 'before', says: 'pitch while it comes', kind: 'frequency', unit: 'Hz', min: 10, max: 2000 },
      { name: 'after', says: 'pitch while it goes', kind: 'frequency', unit: 'Hz', min: 10, max: 2000 },
      air,
    ],
    outputs: [{ name: 'speed', says: 'boat speed', kind: 'speed', unit: 'm/s' }],
    reckon: ({ before, after, air: t }) => {
      if (after > before)
        throw new RangeError('after: must not be above the pitch before; a passing craft falls in pitch')
      return { speed: passSpeed(before, after, soundSpeed(celsius(t))) }
    },
    sources: [pierce],
  }),
  defineReckoner({
    id: 'blade-pass',
    title: 'Blade-pass frequency',
    trade: 'sound',
    says: 'The tone of the impeller’s blades passing the vanes, and how far below it would lie with slip in the coupling.',
    inputs: [
      rotation,
      { name: 'blades', says: 'blades of the impeller', kind: 'count', unit: '1', min: 1, max: 12 },
      {
        name: 'ratio',
        says: 'engine turns for one of the impeller',
        kind: 'ratio',
        unit: '1',
        min: 0.2,
        max: 10,
        assumed: 1,
      },
      {
        name: 'slip',
        says: 'part lost in the coupling',
        kind: 'ratio',
        unit: '%',
        min: 0,
        max: 0.9,
        assumed: 0,
      },
    ],
    outputs: [
      { name: 'tone', says: 'blade passages a second', kind: 'frequency', unit: 'Hz' },
      { name: 'order', says: 'passages a turn of the engine', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ rotation: n, blades, ratio, slip }) => {
      const tone = bladePassRate(n, blades, 1 / ratio, slip)
      return { tone, order: tone / n }
    },
    sources: ['Kinematics: blades × turns a second of the impeller'],
  }),
  defineReckoner({
    id: 'listening-window',
    title: 'What a listening window can tell apart',
    trade: 'sound',
    says: 'How near two engines may be, and how fast one may change, for lines to stay apart in a window of sound.',
    inputs: [
      {
        name: 'window',
        says: 'length of sound looked at',
        kind: 'time',
        unit: 's',
        min: 0.02,
        max: 10,
        assumed: 0.36,
      },
      {
        name: 'harmonic',
        says: 'line looked at, 1 = the lowest',
        kind: 'count',
        unit: '1',
        min: 1,
        max: 20,
        assumed: 5,
      },
    ],
    outputs: [
      { name: 'lobe', says: 'width of one line', kind: 'frequency', unit: 'Hz' },
      {
        name: 'split',
        says: 'difference in firing rate that splits two lines',
        kind: 'frequency',
        unit: 'Hz',
      },
      {
        name: 'splitRpm',
        says: 'the same as engine speed, one firing a turn',
        kind: 'rotation',
        unit: 'rpm',
      },
      { name: 'steepest', says: 'rpm a second beyond which the line smears', kind: 'ratio', unit: '1' },
    ],
    reckon: ({ window, harmonic }) => {
      const split = splitAt(window, harmonic)
      return {
        lobe: hannLobe(window),
        split,
        splitRpm: split,
        steepest: 60 * slopeLimit(window, harmonic),
      }
    },
    sources: [
      'F. J. Harris, Proc. IEEE 66 (1978) 51: Hann window, main lobe 4/T',
      'Smear h s T below half a lobe: derived',
    ],
  }),
  defineReckoner({
    id: 'quarter-wave',
    title: 'Fixed resonance of a tube',
    trade: 'sound',
    says: 'The lowest tone of a tube closed at one end. It stays where it is when the engine changes speed.',
    inputs: [
      { name: 'length', says: 'length of the tube', kind: 'length', unit: 'mm', min: 0.01, max: 10 },
      {
        name: 'gas',
        says: 'temperature of the gas in it',
        kind: 'temperature',
        unit: '°C',
        min: 243.15,
        max: 1300,
        assumed: 293.15,
      },
      {
        name: 'gamma',
        says: 'ratio of specific heats; 1.4 air, about 1.35 hot exhaust',
        kind: 'ratio',
        unit: '1',
        min: 1.2,
        max: 1.67,
        assumed: 1.4,
      },
    ],
    outputs: [
      { name: 'tone', says: 'lowest resonance', kind: 'frequency', unit: 'Hz' },
      { name: 'sound', says: 'speed of sound in it', kind: 'speed', unit: 'm/s' },
    ],
    reckon: ({ length, gas, gamma }) => {
      const sound = gasSoundSpeed(gamma, gas)
      return { tone: quarterWave(length, sound), sound }
    },
    sources: [
      'L. E. Kinsler and others, Fundamentals of Acoustics (4th ed. 2000), section 10.2; end correction left out',
    ],
  }),
  defineReckoner({
    id: 'run-down',
    title: 'How fast a shut engine slows with its pump',
    trade: 'sound',
    says: 'With the pump engaged the speed halves in this time and 1/rpm rises in a straight line; a free engine falls in a straight line instead.',
    inputs: [
      {
        name: 'inertia',
        says: 'everything that turns, at the crankshaft',
        kind: 'inertia',
        unit: 'kg·m²',
        min: 1e-5,
        max: 1,
      },
      rotation,
      {
        name: 'torque',
        says: 'pump torque at that speed, at the crankshaft',
        kind: 'torque',
        unit: 'N·m',
        min: 0.01,
        max: 500,
      },
    ],
    outputs: [{ name: 'half', says: 'time to half the speed', kind: 'time', unit: 's' }],
    reckon: ({ inertia, rotation: n, torque }) => {
      const omega = 2 * Math.PI * n
      return { half: runDownHalf(inertia, torque / omega ** 2, omega) }
    },
    sources: ['Derived: I dω/dt = -k ω², so 1/ω grows by k t / I'],
  }),
  defineReckoner({
    id: 'timed-run',
    title: 'Speed from a stopwatch',
    trade: 'sound',
    says: 'Speed over a measured stretch with a flying start, and its likely error from hand timing.',
    inputs: [
      { name: 'distance', says: 'between the gates', kind: 'length', unit: 'm', min: 2, max: 5000 },
      { name: 'seconds', says: 'time between them', kind: 'time', unit: 's', min: 0.5, max: 3600 },
      {
        name: 'timing',
        says: 'error of one press of the watch, one standard deviation',
        kind: 'time',
        unit: 's',
        min: 0.001,
        max: 1,
        assumed: 0.14,
      },
    ],
    outputs: [
      { name: 'speed', says: 'speed', kind: 'speed', unit: 'm/s' },
      { name: 'low', says: 'low end, nineteen in twenty', kind: 'speed', unit: 'm/s' },
      { name: 'high', says: 'high end, nineteen in twenty', kind: 'speed', unit: 'm/s' },
    ],
    reckon: ({ distance, seconds, timing }) => {
      const r = timedSpeed(distance, seconds, timing)
      return { speed: r.value, low: r.low, high: r.high }
    },
    sources: ['Propagation of error, first order; gates placed to 0.3 m'],
    cautions: ['Keep people and other boats out of the course, and a second person watching.'],
  }),
  defineReckoner({
    id: 'jitter-loss',
    title: 'What uneven timing leaves of a harmonic',
    trade: 'sound',
    says: 'How much of a line is left when each firing comes a little early or late: why high lines of a real engine vanish.',
    inputs: [
      { name: 'harmonic', says: 'line, 1 = the lowest', kind: 'count', unit: '1', min: 1, max: 60 },
      {
        name: 'scatter',
        says: 'timing scatter as a part of the period, one standard deviation',
        kind: 'ratio',
        unit: '%',
        min: 0,
        max: 0.1,
      },
    ],
    outputs: [{ name: 'left', says: 'amplitude left', kind: 'ratio', unit: '1' }],
    reckon: ({ harmonic, scatter }) => ({ left: jitterLeft(harmonic, scatter) }),
    sources: ['Characteristic function of a Gaussian, any textbook of probability'],
  }),
]
