/**
 * Kinds of quantity and the units each may be written in.
 * SI value = written value * factor + offset. Factors: BIPM, The International System of Units (2019);
 * NIST SP 811 (2008) Appendix B for inch, pound, gallon, horsepower and knot.
 */
export interface Unit {
  /** as shown */
  name: string
  /** other spellings accepted when read */
  also?: readonly string[]
  factor: number
  offset?: number
}

interface KindTable {
  readonly [kind: string]: readonly Unit[]
}

const u = (name: string, factor: number, also: readonly string[] = [], offset?: number): Unit =>
  offset === undefined ? { name, factor, also } : { name, factor, also, offset }

const inch = 0.0254
const foot = 0.3048
const pound = 0.45359237
const poundForce = 4.4482216152605
const gallon = 231 * inch ** 3
const psi = poundForce / inch ** 2

/** The first unit of each kind is the SI unit numbers are held in. */
export const kinds = {
  length: [
    u('m', 1),
    u('mm', 1e-3),
    u('cm', 1e-2),
    u('µm', 1e-6, ['um', 'μm']),
    u('in', inch, ['inch', 'inches', '"']),
    u('ft', foot, ['feet', 'foot', "'"]),
    u('thou', inch / 1000, ['mil']),
  ],
  area: [
    u('m²', 1, ['m2', 'm^2']),
    u('mm²', 1e-6, ['mm2', 'mm^2']),
    u('cm²', 1e-4, ['cm2', 'cm^2']),
    u('in²', inch ** 2, ['in2', 'sq in', 'in^2']),
  ],
  volume: [
    u('m³', 1, ['m3', 'm^3']),
    u('L', 1e-3, ['l', 'litre', 'litres', 'liter', 'liters', 'dm3', 'dm³']),
    u('cm³', 1e-6, ['cc', 'cm3', 'ml', 'mL', 'cm^3']),
    u('mm³', 1e-9, ['mm3']),
    u('US gal', gallon, ['usgal', 'US gallon', 'US gallons']),
    u('in³', inch ** 3, ['in3', 'cu in']),
  ],
  mass: [u('kg', 1), u('g', 1e-3), u('lb', pound, ['lbs', 'lbm']), u('oz', pound / 16)],
  time: [u('s', 1, ['sec']), u('ms', 1e-3), u('min', 60), u('h', 3600, ['hr', 'hours'])],
  angle: [u('rad', 1), u('deg', Math.PI / 180, ['°', 'degree', 'degrees'])],
  rotation: [
    u('rev/s', 1),
    u('rpm', 1 / 60, ['rev/min', 'r/min', '1/min', 'RPM']),
    u('rad/s', 1 / (2 * Math.PI)),
  ],
  frequency: [u('Hz', 1), u('kHz', 1e3)],
  speed: [
    u('m/s', 1),
    u('km/h', 1 / 3.6, ['kmh', 'kph']),
    u('mph', 0.44704),
    u('kn', 1852 / 3600, ['knot', 'knots', 'kt']),
    u('ft/s', foot),
  ],
  acceleration: [u('m/s²', 1, ['m/s2'])],
  force: [u('N', 1), u('kN', 1e3), u('kgf', 9.80665, ['kp']), u('lbf', poundForce)],
  torque: [
    u('N·m', 1, ['N m', 'Nm', 'N*m', 'N.m']),
    u('kgf·m', 9.80665, ['kgfm', 'kgf m', 'kgm']),
    u('lbf·ft', poundForce * foot, ['lbf ft', 'lb ft', 'ft lb', 'ft lbf', 'lbft', 'lb·ft', 'lb-ft', 'ft-lb']),
    u('lbf·in', poundForce * inch, ['lbf in', 'in lb', 'in lbf']),
  ],
  power: [
    u('W', 1),
    u('kW', 1e3),
    u('hp', 550 * foot * poundForce, ['HP', 'bhp']),
    u('PS', 75 * 9.80665, ['metric hp', 'cv']),
  ],
  energy: [u('J', 1), u('kJ', 1e3), u('MJ', 1e6), u('Wh', 3600), u('kWh', 3.6e6)],
  pressure: [
    u('Pa', 1),
    u('kPa', 1e3),
    u('MPa', 1e6),
    u('GPa', 1e9),
    u('bar', 1e5),
    u('mbar', 100, ['hPa']),
    u('psi', psi),
    u('mmH₂O', 9.80665, ['mmH2O', 'mm H2O']),
    u('atm', 101325),
  ],
  temperature: [
    u('K', 1),
    u('°C', 1, ['C', 'degC', 'celsius'], 273.15),
    u('°F', 5 / 9, ['F', 'degF', 'fahrenheit'], 459.67 * (5 / 9)),
  ],
  temperatureStep: [u('K', 1, ['°C', 'C']), u('°F', 5 / 9, ['F'])],
  density: [
    u('kg/m³', 1, ['kg/m3']),
    u('g/cm³', 1e3, ['g/cm3', 'g/cc']),
    u('lb/ft³', pound / foot ** 3, ['lb/ft3']),
  ],
  viscosity: [u('Pa·s', 1, ['Pa s', 'Pas']), u('mPa·s', 1e-3, ['mPa s', 'cP'])],
  kinematicViscosity: [u('m²/s', 1, ['m2/s']), u('mm²/s', 1e-6, ['cSt', 'mm2/s'])],
  volumeFlow: [
    u('m³/s', 1, ['m3/s']),
    u('L/s', 1e-3, ['l/s']),
    u('L/min', 1e-3 / 60, ['l/min']),
    u('L/h', 1e-3 / 3600, ['l/h']),
    u('US gal/min', gallon / 60, ['usgpm']),
  ],
  massFlow: [
    u('kg/s', 1),
    u('g/s', 1e-3),
    u('kg/min', 1 / 60),
    u('g/min', 1e-3 / 60),
    u('kg/h', 1 / 3600),
    u('lb/h', pound / 3600),
  ],
  specificEnergy: [u('J/kg', 1), u('m of water', 9.80665), u('MJ/kg', 1e6)],
  specificConsumption: [u('kg/J', 1), u('g/kWh', 1e-3 / 3.6e6)],
  stiffness: [u('N/m', 1), u('N/mm', 1e3)],
  rotationalStiffness: [u('N·m/rad', 1, ['N m/rad', 'Nm/rad'])],
  foundation: [u('Pa/m', 1), u('MN/m³', 1e6, ['MPa/m', 'MN/m3'])],
  lineLoad: [u('N/m', 1), u('N/mm', 1e3), u('lbf/in', poundForce / inch)],
  massPerArea: [u('kg/m²', 1, ['kg/m2']), u('lb/ft²', pound / foot ** 2, ['lb/ft2'])],
  inertia: [u('kg·m²', 1, ['kg m2', 'kgm2']), u('g·mm²', 1e-9)],
  unbalance: [u('kg·m', 1), u('g·mm', 1e-6, ['g mm'])],
  areaMoment: [
    u('m⁴', 1, ['m4']),
    u('cm⁴', 1e-8, ['cm4']),
    u('mm⁴', 1e-12, ['mm4']),
    u('in⁴', inch ** 4, ['in4']),
  ],
  sectionModulus: [u('m³', 1, ['m3']), u('mm³', 1e-9, ['mm3'])],
  plateStiffness: [u('N·m', 1, ['N m'])],
  conductivity: [u('W/(m·K)', 1, ['W/m/K', 'W/mK'])],
  heatTransfer: [u('W/(m²·K)', 1, ['W/m2K', 'W/m2/K'])],
  heatFlux: [u('W/m²', 1, ['W/m2']), u('kW/m²', 1e3, ['kW/m2'])],
  expansion: [u('1/K', 1)],
  gasConstant: [u('J/(kg·K)', 1, ['J/kg/K', 'J/kgK'])],
  flowResistivity: [u('Pa·s/m²', 1, ['Pa s/m2']), u('kPa·s/m²', 1e3, ['kPa s/m2'])],
  level: [u('dB', 1), u('dB(A)', 1, ['dBA'])],
  levelPerLength: [u('dB/m', 1)],
  timeArea: [u('s/m', 1), u('s·mm²/cm³', 1, ['s mm2/cm3'])],
  ratio: [u('1', 1, ['']), u('%', 1e-2, ['percent'])],
  count: [u('1', 1, [''])],
  voltage: [u('V', 1)],
  current: [u('A', 1)],
  resistance: [u('Ω', 1, ['ohm', 'Ohm']), u('mΩ', 1e-3, ['mohm'])],
  torquePerCurrent: [u('N·m/A', 1, ['N m/A', 'Nm/A'])],
  charge: [u('C', 1), u('A·h', 3600, ['Ah'])],
  /** not a number: one of a list of words */
  choice: [u('', 1)],
} as const satisfies KindTable

export type Kind = keyof typeof kinds

/** Words whose meaning depends on who wrote them; they are refused with the choices named. */
export const ambiguous: Readonly<Record<string, string>> = {
  gal: 'a US gallon is 3.785 L and an imperial one 4.546 L; write "US gal" or litres',
  gals: 'a US gallon is 3.785 L and an imperial one 4.546 L; write "US gal" or litres',
  gallon: 'a US gallon is 3.785 L and an imperial one 4.546 L; write "US gal" or litres',
  gallons: 'a US gallon is 3.785 L and an imperial one 4.546 L; write "US gal" or litres',
  gpm: 'gallons may be US or imperial; write "US gal/min" or L/min',
  'imp gal': 'imperial gallons are not among the units; one is 4.546 L',
  ton: 'a ton may be 1000, 907 or 1016 kg; write kg',
  tons: 'a ton may be 1000, 907 or 1016 kg; write kg',
}

/** Name of the SI unit numbers of this kind are held in. */
export function siUnit(kind: Kind): string {
  return kinds[kind][0].name
}
