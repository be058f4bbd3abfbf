/** Words that the float findings share. */
export const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
export const own = 'Exact integrals on the hull’s own mesh, balance of weight and buoyancy'
export const advice = 'Heights advised are engineering judgement, no rule'
export const cm = (x: number): string =>
  `${(100 * x).toFixed(Math.abs(x) < 0.1 ? 1 : 0)} cm`.replace(/^-/, '−')
export const mm = (x: number): string => `${Math.round(1000 * x)} mm`
export const kg = (x: number): string => `${x.toFixed(x < 10 ? 1 : 0)} kg`
export const deg = (a: number): string => `${((a * 180) / Math.PI).toFixed(1)}°`
export const litres = (v: number): string => `${Math.round(1000 * v)} L`
