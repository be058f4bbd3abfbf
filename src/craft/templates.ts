/**
 * What a new craft begins with, by its kind: sizes such craft usually have, every one a guess with a wide range, so that the first
 * answer says how little is known. Invented for this project.
 */

export const templateKinds = [
  'stand on, one engine',
  'stand on, two engines in line',
  'kneel on, one engine',
  'kneel on, two engines in line',
  'stand on, electric',
] as const
export type TemplateKind = (typeof templateKinds)[number]

interface Sizes {
  stance: 'standing' | 'kneeling'
  engines: readonly string[]
  /** impeller bore, pitch and nozzle bore */
  jet: readonly [string, string, string]
  hull: readonly [length: string, beam: string]
  mass: string
  /** weight's place forward of the transom and up */
  at: readonly [string, string]
}

const petrol = (name: string, displacement: string, power: string): string =>
  `{ name: ${name}, kind: peak, displacement: ${displacement}, power: ${power}, power at: 7000 rpm ±700 (guess) }`

const sizes: Readonly<Record<TemplateKind, Sizes>> = {
  'stand on, one engine': {
    stance: 'standing',
    engines: [petrol('engine', '80 cm³ ±15 (guess)', '4.8 kW ±1.4 (guess)')],
    jet: ['105 mm ±12 (guess)', '85 mm ±20 (guess)', '58 mm ±8 (guess)'],
    hull: ['2.2 m ±0.3 (guess)', '0.75 m ±0.08 (guess)'],
    mass: '38 kg ±10 (guess)',
    at: ['0.9 m', '0.13 m'],
  },
  'stand on, two engines in line': {
    stance: 'standing',
    engines: [
      petrol('front', '45 cm³ ±10 (guess)', '2.6 kW ±0.8 (guess)'),
      petrol('rear', '45 cm³ ±10 (guess)', '2.6 kW ±0.8 (guess)'),
    ],
    jet: ['105 mm ±12 (guess)', '85 mm ±20 (guess)', '58 mm ±8 (guess)'],
    hull: ['2.3 m ±0.3 (guess)', '0.78 m ±0.08 (guess)'],
    mass: '44 kg ±10 (guess)',
    at: ['0.95 m', '0.13 m'],
  },
  'kneel on, one engine': {
    stance: 'kneeling',
    engines: [petrol('engine', '80 cm³ ±15 (guess)', '5 kW ±1.5 (guess)')],
    jet: ['110 mm ±12 (guess)', '100 mm ±20 (guess)', '60 mm ±8 (guess)'],
    hull: ['2.4 m ±0.3 (guess)', '0.75 m ±0.08 (guess)'],
    mass: '55 kg ±12 (guess)',
    at: ['0.9 m', '0.15 m'],
  },
  'kneel on, two engines in line': {
    stance: 'kneeling',
    engines: [
      petrol('front', '60 cm³ ±12 (guess)', '3.8 kW ±1.1 (guess)'),
      petrol('rear', '60 cm³ ±12 (guess)', '3.8 kW ±1.1 (guess)'),
    ],
    jet: ['120 mm ±12 (guess)', '100 mm ±20 (guess)', '66 mm ±8 (guess)'],
    hull: ['2.7 m ±0.3 (guess)', '0.85 m ±0.08 (guess)'],
    mass: '70 kg ±14 (guess)',
    at: ['1 m', '0.16 m'],
  },
  'stand on, electric': {
    stance: 'standing',
    engines: [
      '{ name: motor, kind: electric, most torque: 14 N·m ±4 (guess), free speed: 6500 rpm ±900 (guess) }',
    ],
    jet: ['105 mm ±12 (guess)', '85 mm ±20 (guess)', '58 mm ±8 (guess)'],
    hull: ['2.1 m ±0.3 (guess)', '0.72 m ±0.08 (guess)'],
    mass: '36 kg ±10 (guess)',
    at: ['0.85 m', '0.12 m'],
  },
}

/** The text of a new craft of a kind. */
export function templateText(name: string, kind: TemplateKind = 'kneel on, one engine'): string {
  const { stance, engines, jet, hull, mass, at } = sizes[kind]
  return `wakewright: 1
name: ${JSON.stringify(name)}
rider: { mass: 75 kg ±20 (guess), stance: ${stance} }
engines:
${engines.map((e) => `  - ${e}`).join('\n')}
drive: { ratio: 1 ±0.1 (guess) }
jet:
  rotor: { bore: ${jet[0]}, pitch: ${jet[1]} }
  nozzle: { bore: ${jet[2]} }
hull: { length: ${hull[0]}, beam: ${hull[1]} }
weights:
  - { name: everything but the rider, mass: ${mass}, at: [${at[0]}, 0 m, ${at[1]}] }
`
}
