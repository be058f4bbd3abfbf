/**
 * Heat content of fresh charge and burnt gas in the cylinder and the crankcase. c_v fits: least squares over
 * 290-800 K (fresh, iso-octane vapour and air, air ratio 0.87; 0.3 %) and 400-2800 K (burnt, frozen; 0.8 %),
 * derived from thermochemical tables. Datum 298.15 K. T in K, y mass fraction of fresh charge, J/kg.
 */
export const freshR = 272.9
export const burntR = 299.4
const datum = 298.15

/** Gas constant of the mixture, J/(kg K). */
export const mixR = (y: number): number => burntR + (freshR - burntR) * y

/** Specific heat at constant volume, J/(kg K). */
export function mixCv(t: number, y: number): number {
  const fresh = 648.8 + 0.4476 * t
  const burnt = 678.5 + t * (0.38094 - 6.874e-5 * t)
  return burnt + (fresh - burnt) * y
}

/** Internal energy above 298.15 K, J/kg. */
export function mixEnergy(t: number, y: number): number {
  const d1 = t - datum
  const d2 = t * t - datum * datum
  const fresh = 648.8 * d1 + 0.2238 * d2
  const burnt = 678.5 * d1 + 0.19047 * d2 - (6.874e-5 / 3) * (t * t * t - datum * datum * datum)
  return burnt + (fresh - burnt) * y
}

/** Enthalpy on the same datum, J/kg. */
export const mixEnthalpy = (t: number, y: number): number => mixEnergy(t, y) + mixR(y) * t

/** Temperature of internal energy e, J/kg, by Newton from a near guess; K. */
export function mixTemperature(e: number, y: number, guess: number): number {
  let t = guess
  for (let k = 0; k < 12; k++) {
    const step = (e - mixEnergy(t, y)) / mixCv(t, y)
    t += step
    if (step < 1e-10 * t && step > -1e-10 * t) break
  }
  return t
}
