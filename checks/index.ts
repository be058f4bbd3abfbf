import type { CheckRow } from '../src/answers/check.ts'

/** Every group of external checks, by the folder it checks; one line a group. */
export const groups: Record<string, () => Promise<CheckRow[]>> = {
  engine: async () => (await import('./engine.ts')).engineChecks(),
  exhaust: async () => (await import('./exhaust.ts')).exhaustChecks(),
  float: async () => (await import('./float.ts')).floatChecks(),
  gas: async () => (await import('./gas.ts')).gasChecks(),
  'hull-resistance': async () => (await import('./hull-resistance.ts')).hullResistanceChecks(),
  jet: async () => (await import('./jet.ts')).jetChecks(),
  'jet-rotor': async () => (await import('./jet-rotor.ts')).jetRotorChecks(),
  sound: async () => (await import('./sound.ts')).soundChecks(),
  strength: async () => (await import('./strength.ts')).strengthChecks(),
  units: async () => (await import('./units.ts')).unitsChecks(),
}

export async function allChecks(): Promise<CheckRow[]> {
  const lists = await Promise.all(Object.values(groups).map((load) => load()))
  return lists.flat()
}
