import type { CheckRow } from '../src/base/answers/check.ts'

/** Every group of external checks, by the folder it checks; one line a group. */
export const groups: Record<string, () => Promise<CheckRow[]>> = {
  bay: async () => (await import('./bayChecks.ts')).bayChecks(),
  controls: async () => (await import('./controlsChecks.ts')).controlsChecks(),
  driveline: async () => (await import('./drivelineChecks.ts')).drivelineChecks(),
  engine: async () => (await import('./engineChecks.ts')).engineChecks(),
  exhaust: async () => (await import('./exhaustChecks.ts')).exhaustChecks(),
  float: async () => (await import('./floatChecks.ts')).floatChecks(),
  fuel: async () => (await import('./fuelChecks.ts')).fuelChecks(),
  gas: async () => (await import('./gasChecks.ts')).gasChecks(),
  'hull-resistance': async () => (await import('./hull-resistance.ts')).hullResistanceChecks(),
  jet: async () => (await import('./jetChecks.ts')).jetChecks(),
  'jet-rotor': async () => (await import('./jet-rotor.ts')).jetRotorChecks(),
  prints: async () => (await import('./printsChecks.ts')).printsChecks(),
  sound: async () => (await import('./soundChecks.ts')).soundChecks(),
  strength: async () => (await import('./strengthChecks.ts')).strengthChecks(),
  units: async () => (await import('./unitsChecks.ts')).unitsChecks(),
}

export async function allChecks(): Promise<CheckRow[]> {
  const lists = await Promise.all(Object.values(groups).map((load) => load()))
  return lists.flat()
}
