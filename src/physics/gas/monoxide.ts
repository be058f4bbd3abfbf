/** Carbon monoxide of rich petrol engines. Equilibrium of burnt iso-octane at the temperature where it freezes, derived in engineering units. */

/** Volume part of carbon monoxide in dry exhaust at excess-air ratio lambda: 4.6 % at 0.87, 7.2 % at 0.80; at least 0.2 %. */
export function monoxide(lambda: number): number {
  return Math.max(0.002, 0.046 + ((0.072 - 0.046) / (0.8 - 0.87)) * (lambda - 0.87))
}
