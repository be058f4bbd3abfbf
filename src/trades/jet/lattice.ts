/**
 * Potential flow through a lattice of flat plates.
 * F. Weinig, Die Strömung um die Schaufeln von Turbomaschinen (Barth, Leipzig 1935): conformal map of the staggered
 * plate lattice on the circle; formula from memory, checked against its two exact limits (unstaggered plates,
 * dense lattice) in checks/jet.ts. Angles are from the machine's axis, rad.
 */

/** Solidity that belongs to map radius 1 + x (x > 0) at stagger `gam`; falls steadily with x. */
function solidityOf(x: number, gam: number): number {
  const r = 1 + x
  const cosine = Math.cos(gam)
  const sine = Math.sin(gam)
  const s = Math.sqrt(r ** 4 + 2 * r * r * Math.cos(2 * gam) + 1)
  // R² - 1 = x (2 + x) keeps its digits when the plates overlap deeply and x is tiny
  return (
    (2 / Math.PI) *
    (cosine * Math.log((s + 2 * r * cosine) / (x * (2 + x))) + sine * Math.atan((2 * r * sine) / s))
  )
}

/**
 * Lift of one plate of the lattice over that of a lone plate, C_L = 2π K sin α∞.
 * `solidity` chord over spacing, > 0; `gam` stagger, 0 to below π/2. 1 for a lone blade.
 */
export function latticeLift(solidity: number, gam: number): number {
  if (!(solidity > 0)) return solidity === 0 ? 1 : Number.NaN
  let low = -30
  let high = 12
  if (solidity <= solidityOf(Math.exp(high), gam)) return 1
  if (solidity < solidityOf(Math.exp(low), gam)) {
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2
      if (solidityOf(Math.exp(middle), gam) > solidity) low = middle
      else high = middle
    }
  } else high = low
  const r = 1 + Math.exp((low + high) / 2)
  const s = Math.sqrt(r ** 4 + 2 * r * r * Math.cos(2 * gam) + 1)
  return (4 * r) / (Math.PI * solidity * s)
}

/**
 * Share of the full turning that an ideal lattice gives: 0 for a lone blade, 1 when plates overlap deeply.
 * Same ranges as `latticeLift`.
 */
export function turningShare(solidity: number, gam: number): number {
  const q = (Math.PI / 2) * solidity * latticeLift(solidity, gam) * Math.cos(gam)
  return (2 * q) / (1 + q)
}
