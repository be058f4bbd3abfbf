/** The air over the fuel: what a vent lets build up, and what a shut one lets fall. Orifice flow with 0.6; Boyle's law. */

const discharge = 0.6

/** Pa over the outside while a tank is filled at a flow (m³/s) and a medium of a density (kg/m³) leaves through a vent (bore, m). */
export function airForFilling(flow: number, bore: number, density: number): number {
  return 0.5 * density * (flow / (discharge * (Math.PI / 4) * bore ** 2)) ** 2
}

/** Pa by which a closed tank falls when so much (m³) was drawn from under an ullage (m³), the air still as warm. */
export function blockedVentFall(ullage: number, drawn: number, air: number): number {
  return air * (1 - ullage / (ullage + drawn))
}

/** m³ drawn when a closed tank has fallen by what a pump lifts (Pa, below the air's). */
export function drawnUntil(ullage: number, lift: number, air: number): number {
  if (!(lift < air)) throw new RangeError('lift: no pump draws more than the pressure of the air')
  return (ullage * lift) / (air - lift)
}
