/** Sums over one cycle; SI. */
export interface CycleSums {
  /** work of the gas on the crown from above and from below, J */
  work: number
  caseWork: number
  /** mass taken in; mass that left the stinger or box; fresh mass that left the pipe, kg */
  massIn: number
  massOut: number
  freshOut: number
  /** fresh mass through the transfers into the cylinder, and all that flowed back, kg */
  transferIn: number
  transferBack: number
  /** at exhaust closing: mass, fresh mass, delivered volume over cylinder volume */
  trapped: number
  trappedFresh: number
  /** pressure and temperature at exhaust closing */
  trappedP: number
  trappedT: number
  delivered: number
  burntFresh: number
  heatFreed: number
  heatCylinder: number
  heatCase: number
  heatBox: number
  enthalpyIn: number
  enthalpyOut: number
  /** enthalpy lost between the heat contents of cylinder and pipe, J */
  ledger: number
  pMax: number
  pMaxAngle: number
  /** lowest pressure at the exhaust port while it is open */
  portPMin: number
  portPMinAngle: number
  /** integral of (port - cylinder pressure) while positive, from transfer to exhaust closing, Pa s */
  plugging: number
  /** forward mass past the probe kg, and that mass times temperature kg K */
  probeMass: number
  probeHeat: number
  /** mean pressure behind the pipe, Pa */
  behind: number
  time: number
  steps: number
}

export const emptySums = (): CycleSums => ({
  work: 0,
  caseWork: 0,
  massIn: 0,
  massOut: 0,
  freshOut: 0,
  transferIn: 0,
  transferBack: 0,
  trapped: 0,
  trappedFresh: 0,
  trappedP: 0,
  trappedT: 0,
  delivered: 0,
  burntFresh: 0,
  heatFreed: 0,
  heatCylinder: 0,
  heatCase: 0,
  heatBox: 0,
  enthalpyIn: 0,
  enthalpyOut: 0,
  ledger: 0,
  pMax: 0,
  pMaxAngle: 0,
  portPMin: Infinity,
  portPMinAngle: 0,
  plugging: 0,
  probeMass: 0,
  probeHeat: 0,
  behind: 0,
  time: 0,
  steps: 0,
})
