/**
 * Friction lines of flat plates and smooth hulls.
 * ITTC (1957), 8th International Towing Tank Conference, model–ship correlation line;
 * Schoenherr (1932), Resistance of flat surfaces moving through a fluid, Trans. SNAME 40 (the "ATTC" line);
 * Blasius (1908), laminar; Prandtl (1927), transitional plate; the constant 4800 belongs to transition at Re 1.5e6,
 * the value Savitsky, DeLorme and Datla (2007) use for spray;
 * Hoerner (1965), Fluid-Dynamic Drag, ch. 6, foils.
 */

function positive(Re: number): void {
  if (!(Re > 0)) throw new RangeError(`Reynolds number ${Re} must be above 0`)
}

/** ITTC-57 friction coefficient on wetted area; Re on length, meant for 1e5 and up, never below 1e3 (held there). */
export function ittc57(Re: number): number {
  positive(Re)
  const l = Math.log10(Math.max(Re, 1e3)) - 2
  return 0.075 / (l * l)
}

/**
 * Schoenherr's line 0.242/√CF = log10(Re·CF), solved by Newton in 1/√CF; Re 1e4 and up (held there).
 * Needed to reproduce papers of the 1960s and 70s.
 */
export function schoenherr(Re: number): number {
  positive(Re)
  const log = Math.log10(Math.max(Re, 1e4))
  // with s = 1/√CF: 0.242 s + 2 log10 s = log10 Re; rising and concave, so Newton from below converges at once
  let s = 1 / Math.sqrt(ittc57(Re))
  for (let i = 0; i < 30; i++) {
    const step = (0.242 * s + (2 * Math.log(s)) / Math.LN10 - log) / (0.242 + 2 / (s * Math.LN10))
    s -= step
    if (Math.abs(step) < 1e-14 * s) break
  }
  return 1 / (s * s)
}

/** Blasius' laminar plate, 1.328/√Re; holds to Re about 5e5, in clean still water to 1.5e6. */
export function laminarPlate(Re: number): number {
  positive(Re)
  return 1.328 / Math.sqrt(Re)
}

/** Prandtl's plate with a laminar front part, 0.074/Re^0.2 − 4800/Re, and Blasius below where the two meet (Re 1.5e6). */
export function transitionalPlate(Re: number): number {
  positive(Re)
  const laminar = laminarPlate(Re)
  return Math.max(laminar, 0.074 / Re ** 0.2 - 4800 / Re)
}

/** Factor on twice the flat-plate drag of a streamlined strut or fin, thickness ratio t/c 0 to 0.3: Hoerner (1965), 6-6. */
export function foilFormFactor(thicknessRatio: number): number {
  return 1 + 2 * thicknessRatio + 60 * thicknessRatio ** 4
}
