/** Keys that were once named otherwise: files that still have the old word are read, and edited in place, as if it were the new one. */
export const oldKeys: Readonly<Record<string, string>> = {
  'nose rocker': 'nose rise',
  'nose rocker start': 'nose rise from',
  'tail rocker': 'stern rise',
  'tail rocker length': 'stern rise over',
  'nose fullness': 'nose roundness',
  'mesh forward': 'bow along',
  'mesh up': 'deck faces',
}

/** The key as it is named today. */
export const todaysKey = (key: string): string => (Object.hasOwn(oldKeys, key) ? oldKeys[key]! : key)
