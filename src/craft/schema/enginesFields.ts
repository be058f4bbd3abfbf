import { choice, count, flag, group, list, quantity, text, variant } from '../fields.ts'
import { exhaustGroup } from './pipeFields.ts'
import { snorkelGroup } from './snorkelFields.ts'
import { twoStroke } from './twoStrokeFields.ts'

/** every engine has these; a dead engine still has to be turned unless a clutch lets go */
const common = {
  name: text({ label: 'Name', gloss: 'What you call this engine.', maxLength: 60, optional: true }),
  running: flag({
    label: 'Running',
    gloss: 'Say no for an engine that is dead but still fitted.',
    assumed: { value: true, why: 'an engine runs unless said otherwise' },
  }),
  redline: quantity('rotation', {
    label: 'Redline',
    gloss: 'The engine speed not to be passed.',
    unit: 'rpm',
    min: 500,
    max: 30000,
    optional: true,
    measure: { what: 'look it up in the maker’s papers', with: 'papers', minutes: 5 },
  }),
  'rotating inertia': quantity('inertia', {
    label: 'Rotating inertia',
    gloss: 'Of crank, flywheel and coupling; only the time to spin up depends on it.',
    max: 1,
    optional: true,
  }),
} as const

/** what piston engines add; `dead drag` left out is worked out from friction and pumping */
const piston = {
  cylinders: count({
    label: 'Cylinders',
    gloss: 'Number of cylinders.',
    min: 1,
    max: 8,
    assumed: { value: 1, low: 1, high: 1, why: 'small two-strokes have one' },
  }),
  idle: quantity('rotation', {
    label: 'Idle',
    gloss: 'Engine speed with the throttle shut.',
    unit: 'rpm',
    min: 300,
    max: 6000,
    assumed: { value: 2000, low: 1500, high: 2800, why: 'small two-strokes, common practice' },
  }),
  'dead drag': quantity('pressure', {
    label: 'Drag when dead',
    gloss:
      'Mean pressure lost turning the engine over when it does not fire; worked out from friction and pumping when left out.',
    unit: 'bar',
    min: 0,
    max: 5,
    optional: true,
    measure: {
      what: 'drive it with plug lead off by a drill on the crank nut and read the torque: pressure = 2π × torque / displacement',
      with: 'drill and luggage scale',
      minutes: 30,
    },
  }),
  snorkel: snorkelGroup,
  'breathes through': count({
    label: 'Breathes through',
    gloss: 'Number of the engine, from 1, whose air intake this one draws through too.',
    min: 1,
    max: 8,
    optional: true,
  }),
} as const

const measuredIn = choice(['standard', 'here'], {
  label: 'Measured in',
  gloss:
    'The air its power or curve was given for: standard (ISO 1585, 99 kPa dry and 25 °C) is brought to the air of the place; here is taken as it is.',
  assumed: { value: 'standard', why: 'makers and test benches give power for standard air' },
})

const displacement = quantity('volume', {
  label: 'Displacement',
  gloss: 'Swept volume of all cylinders.',
  unit: 'cm³',
  min: 5,
  max: 2000,
  measure: { what: 'bore² × stroke × π/4, or the maker’s papers', with: 'caliper', minutes: 10 },
})

/**
 * What small two-strokes give for their volume and temper: mean pressure × revolutions, one firing a turn. Mean pressures of 3.2, 4.5 and
 * 6 bar at 5500, 7000 and 8000 rpm and how far they scatter: common practice, no source.
 */
const perVolume = (value: number, low: number, high: number) => ({
  of: 'displacement',
  times: value,
  low,
  high,
  why: 'mean pressure × speed usual for this temper',
})
const powerByTemper = {
  by: 'temper',
  each: {
    flat: perVolume(29e6, 18e6, 40e6),
    mild: perVolume(52e6, 36e6, 68e6),
    tuned: perVolume(80e6, 55e6, 110e6),
  },
  why: 'not known yet',
}
const usualSpeed = (value: number, low: number, high: number) => ({
  value,
  low,
  high,
  why: 'usual for this temper',
})
const speedByTemper = {
  by: 'temper',
  each: {
    flat: usualSpeed(5500, 4500, 6500),
    mild: usualSpeed(7000, 6200, 8000),
    tuned: usualSpeed(8000, 7000, 9500),
  },
  why: 'not known yet',
}

const trust = (value: number, why: string) =>
  quantity('ratio', {
    label: 'Curve trust',
    gloss: 'How far the whole torque curve may be off, either way.',
    unit: '%',
    min: 0,
    max: 100,
    exact: true,
    assumed: { value, low: value, high: value, why },
  })

const curvePoints = {
  label: 'Torque curve',
  gloss: 'Full throttle torque at the crankshaft, slowest first.',
  minItems: 3,
  maxItems: 200,
} as const
const curvePoint = group(
  { label: 'Point', gloss: 'Torque at one speed.' },
  {
    at: quantity('rotation', {
      label: 'At',
      gloss: 'Engine speed.',
      unit: 'rpm',
      min: 0,
      max: 30000,
      exact: true,
    }),
    torque: quantity('torque', {
      label: 'Torque',
      gloss: 'At the crankshaft, full throttle.',
      unit: 'N·m',
      min: 0,
      max: 500,
      exact: true,
    }),
  },
)

const variants = {
  curve: {
    gloss: 'A measured or published torque curve.',
    fields: {
      ...common,
      displacement,
      ...piston,
      curve: list(curvePoints, curvePoint),
      'measured in': measuredIn,
      'curve trust': trust(10, 'a curve from a maker or a home test'),
    },
  },
  peak: {
    gloss: 'Only the most power and the speed it comes at are known.',
    fields: {
      ...common,
      displacement,
      ...piston,
      power: quantity('power', {
        label: 'Power',
        gloss: 'The most it gives, at the crankshaft.',
        unit: 'kW',
        min: 0.05,
        max: 200,
        undecided: powerByTemper,
      }),
      'power at': quantity('rotation', {
        label: 'Power at',
        gloss: 'Engine speed where it gives the most.',
        unit: 'rpm',
        min: 500,
        max: 25000,
        assumed: speedByTemper,
        undecided: speedByTemper,
      }),
      temper: choice(['tuned', 'mild', 'flat'], {
        label: 'Temper',
        gloss: 'Shape of the curve round its peak: tuned pipe, plain exhaust, or pulling evenly.',
        assumed: { value: 'mild', why: 'an engine with a plain exhaust' },
      }),
      'measured in': measuredIn,
      'curve trust': trust(15, 'the shape of the curve is an estimate'),
    },
  },
  electric: {
    gloss: 'An electric motor: from its constants, or from its most torque and its free speed.',
    fields: {
      ...common,
      'torque per current': quantity('torquePerCurrent', {
        label: 'Torque per current',
        gloss: 'Torque constant of the motor.',
        min: 0.001,
        max: 5,
        optional: true,
        measure: {
          what: '9.55 divided by the speed constant in rpm per volt',
          with: 'data sheet',
          minutes: 3,
        },
      }),
      'most current': quantity('current', {
        label: 'Most current',
        gloss: 'The limit set in the controller.',
        min: 1,
        max: 2000,
        optional: true,
      }),
      'idle current': quantity('current', {
        label: 'Idle current',
        gloss: 'Drawn when the motor turns free.',
        min: 0,
        max: 100,
        assumed: { value: 2, low: 1, high: 4, why: 'motors of a few kilowatts' },
      }),
      voltage: quantity('voltage', {
        label: 'Voltage',
        gloss: 'Of the battery under load.',
        min: 3,
        max: 1000,
        optional: true,
        measure: { what: 'read it while the motor pulls', with: 'voltmeter', minutes: 3 },
      }),
      resistance: quantity('resistance', {
        label: 'Resistance',
        gloss: 'Of motor, controller, wires and battery together.',
        unit: 'mΩ',
        min: 0,
        max: 10000,
        assumed: { value: 50, low: 25, high: 120, why: 'motor, controller and battery of a few kilowatts' },
      }),
      'most torque': quantity('torque', {
        label: 'Most torque',
        gloss: 'At a standstill; with the free speed it may stand in place of the constants.',
        min: 0.05,
        max: 1000,
        optional: true,
      }),
      'free speed': quantity('rotation', {
        label: 'Free speed',
        gloss: 'Where the torque line reaches nought.',
        unit: 'rpm',
        min: 100,
        max: 60000,
        optional: true,
      }),
      'curve trust': trust(5, 'motor constants from a data sheet'),
    },
  },
  'two-stroke': {
    gloss: 'Ports, crankcase and pipe: the torque curve is worked out from how it breathes.',
    fields: {
      ...common,
      ...piston,
      ...twoStroke,
      exhaust: exhaustGroup,
      curve: list(
        { ...curvePoints, optional: true, gloss: 'A measured curve to hold the computed one against.' },
        curvePoint,
      ),
      'measured in': measuredIn,
      'curve trust': trust(15, 'a curve worked out from dimensions, not held against a measured point'),
    },
  },
} as const

export const enginesSection = list(
  { label: 'Engines', gloss: 'One, two or more, the front one first.', minItems: 1, maxItems: 8 },
  variant({ label: 'Engine', gloss: 'One engine.', tag: 'kind' }, variants),
)
