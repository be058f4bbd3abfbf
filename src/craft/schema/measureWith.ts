/** How a two-stroke engine is measured at home, as the fields tell it. */
export const wheel = (what: string) => ({ what, with: 'degree wheel and 0.05 mm feeler', minutes: 15 })
export const rubbing = (what: string) => ({ what, with: 'paper and pencil', minutes: 10 })
export const caliper = (what: string, minutes = 3) => ({ what, with: 'caliper', minutes })
