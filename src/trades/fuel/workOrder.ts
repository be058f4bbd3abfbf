/**
 * Numbers of the work on tank and jets. The bottle test runs a jet under a steady head, Q = Cd A √(2 g h).
 * The system test is 33 CFR 183.542: the greater of 3 psi and 1.5 times the pressure at its lowest point when it overflows.
 */
import { jetFlow } from './jetFlow.ts'

const g = 9.80665
/** Pa */
const threePsi = 20_684.27
/** m, of the bottle's surface over the jet: common practice */
export const bottleHead = 0.3

/** m³/s through a jet (m) under a bottle's head (m) of petrol. */
export function bottleTest(bore: number, density: number, head = bottleHead, discharge = 0.75): number {
  return jetFlow(bore, density * g * head, density, discharge)
}

/** Pa to test a tank and its lines with; `head` m from its lowest point to where it overflows. */
export function systemTest(head: number, density: number): number {
  return Math.max(threePsi, 1.5 * density * g * head)
}
