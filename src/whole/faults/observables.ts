/**
 * What may be seen, heard, measured or found by a check, and how often each answer comes where the fault in question does not touch
 * it. The words are those of trades/sound/observations.ts and are kept in saved runs; those that only a recording, a scale or a check
 * gives stand here alone. The usual shares are authored judgement, not published data: 0.02 to 0.2 of those who look at a part nothing is wrong
 * with see any one sign all the same.
 */
export interface Observable {
  id: string
  states: readonly string[]
  /** share of each state where nothing touches it; sums to 1 */
  usual: readonly number[]
  /** the state in a builder's words, behind "because" */
  words: readonly string[]
  /** how much of its weight counts: signs of one and the same thing are not counted twice */
  weight: number
}

const one = (
  id: string,
  states: Readonly<Record<string, readonly [share: number, words: string]>>,
  weight = 1,
): Observable => {
  const list = Object.values(states)
  const sum = list.reduce((a, [share]) => a + share, 0)
  return {
    id,
    states: Object.keys(states),
    usual: list.map(([share]) => share / sum),
    words: list.map(([, words]) => words),
    weight,
  }
}

export const observables: readonly Observable[] = [
  one('rpm', {
    'far low': [0.03, 'the engines turn far slower than they should'],
    low: [0.1, 'the engines turn slower than they should'],
    'as predicted': [0.77, 'the engines turn as predicted'],
    high: [0.1, 'the engines turn faster than they should'],
  }),
  one(
    'pull',
    {
      low: [0.08, 'the pull is low for that engine speed'],
      'as predicted': [0.85, 'the pull goes with the engine speed'],
      high: [0.07, 'the pull is high for that engine speed'],
    },
    0.9,
  ),
  one('pace', {
    slow: [0.1, 'the craft is slow for its pull'],
    'as predicted': [0.9, 'the speed goes with the pull'],
  }),
  one(
    'raced',
    {
      no: [0.93, 'nothing raced'],
      'came back': [0.05, 'it raced and came back by itself'],
      stayed: [0.02, 'it raced and stayed there'],
    },
    0.8,
  ),
  one('apart', {
    'as one': [0.97, 'the engines turn as one'],
    apart: [0.03, 'the engines turn apart'],
  }),
  one('hunts', {
    steady: [0.94, 'the speed is steady'],
    hunting: [0.06, 'it hunts, up and down by itself'],
  }),
  one('lasted', {
    'from the start': [0.64, 'it was so from the start'],
    'after a minute or two': [0.07, 'it began after a minute or two'],
    'when hot': [0.09, 'it came when hot'],
    'in turns': [0.12, 'it comes and goes'],
    suddenly: [0.06, 'it came at once and stayed'],
    'when tilted': [0.02, 'it came when tilted'],
  }),
  one('choke', {
    helped: [0.08, 'the choke helped'],
    'no change': [0.46, 'the choke changed nothing'],
    'made it worse': [0.46, 'the choke made it worse'],
  }),
  one('opening', {
    cleanly: [0.88, 'it takes the throttle cleanly'],
    bogged: [0.06, 'it bogs when the throttle opens'],
    'only part way': [0.04, 'it only goes with the throttle part open'],
    hung: [0.02, 'the speed hangs when the throttle closes'],
  }),
  one('sounded', {
    clean: [0.88, 'it sounds clean'],
    burbling: [0.04, 'it burbles, firing turn about'],
    missing: [0.02, 'it misses'],
    pinking: [0.015, 'it pinks'],
    muffled: [0.015, 'it sounds muffled'],
    gravelly: [0.03, 'the pump rumbles'],
  }),
  one(
    'engines',
    {
      alike: [0.9, 'the engines run alike'],
      unlike: [0.08, 'one engine is weaker than the other'],
      'only one': [0.02, 'only one of them fires'],
    },
    0.9,
  ),
  one(
    'jet',
    {
      solid: [0.88, 'the jet is solid'],
      frothy: [0.05, 'the jet froths'],
      weak: [0.05, 'the jet is weak'],
      pulsing: [0.02, 'the jet pulses'],
    },
    0.7,
  ),
  one('plug', {
    tan: [0.8, 'the plug is tan'],
    white: [0.06, 'the plug is white'],
    'black and dry': [0.08, 'the plug is black'],
    wet: [0.03, 'the plug is wet'],
    'water drops': [0.02, 'there is water on the plug'],
    'silver specks': [0.01, 'there is metal on the plug'],
  }),
  one('heat', {
    'as usual': [0.9, 'nothing is hotter than usual'],
    'very hot': [0.06, 'the cylinders are very hot'],
    'coupling hot': [0.01, 'a coupling is hot'],
    'one cool': [0.03, 'one cylinder stayed cool'],
  }),
  one(
    'smoke',
    {
      little: [0.84, 'it smokes little'],
      heavy: [0.09, 'it smokes heavily'],
      rubber: [0.01, 'it smells of rubber'],
      steam: [0.03, 'it steams'],
      none: [0.03, 'it does not smoke at all'],
    },
    0.8,
  ),
  one('cap', {
    recovered: [0.04, 'it recovered with the cap loosened'],
    'no change': [0.96, 'the cap loosened changed nothing'],
  }),
  one(
    'trim',
    {
      level: [0.78, 'it sits level'],
      'bow up': [0.1, 'it runs with the bow up'],
      'bow down': [0.1, 'it runs with the bow down'],
      leaned: [0.02, 'it leans'],
    },
    0.8,
  ),
  one('hand', {
    free: [0.93, 'it turns freely by hand'],
    stiff: [0.04, 'it is stiff to turn'],
    locked: [0.01, 'it is locked'],
    'no compression': [0.02, 'it has no compression'],
  }),
  one(
    'idle',
    {
      'as usual': [0.8, 'it idles as usual'],
      high: [0.06, 'it idles high'],
      low: [0.06, 'it idles low'],
      dies: [0.08, 'it dies at idle'],
    },
    0.8,
  ),
  one('start', {
    'as usual': [0.84, 'it started as usual'],
    hard: [0.1, 'it started hard'],
    'only with choke': [0.04, 'it started only with choke'],
    'not at all': [0.02, 'it did not start'],
  }),
  one(
    'stopped',
    {
      'by hand': [0.82, 'it was stopped by hand'],
      'faded out': [0.08, 'it faded out'],
      'at once': [0.07, 'it stopped at once'],
      'ran on': [0.03, 'it ran on with the spark off'],
    },
    0.7,
  ),
  one('line', {
    full: [0.9, 'the fuel line is full'],
    bubbles: [0.08, 'there are bubbles in the fuel line'],
    empty: [0.02, 'the fuel line is empty'],
  }),
  one(
    'pipes',
    {
      'both hot': [0.92, 'both exhausts are hot'],
      'one cold': [0.06, 'one exhaust is cold'],
      'both cool': [0.02, 'both exhausts are cool'],
    },
    0.8,
  ),
  one('stream', {
    steady: [0.92, 'the cooling water runs'],
    weak: [0.06, 'the cooling water is weak'],
    none: [0.01, 'no cooling water comes'],
    steaming: [0.01, 'the cooling water steams'],
  }),
  one('intake', {
    clean: [0.88, 'the intake grate is clean'],
    weed: [0.06, 'there is weed on the intake grate'],
    stones: [0.03, 'there are stones in the intake'],
    'part blocked': [0.03, 'the intake is part blocked'],
  }),
  one('rotor', {
    'as made': [0.88, 'the impeller looks as made'],
    nicked: [0.08, 'the impeller is nicked'],
    rubbed: [0.03, 'the impeller has rubbed'],
    cracked: [0.01, 'the impeller is cracked'],
  }),
  one('coupling', {
    'as made': [0.94, 'the couplings are as made and tight'],
    dust: [0.03, 'there is dust under a coupling'],
    'slipped marks': [0.01, 'a coupling shows marks of slipping'],
    hot: [0.01, 'a coupling is hot'],
    'bolts out': [0.005, 'bolts of a coupling are loose or gone'],
    broken: [0.005, 'a coupling is broken'],
  }),
  one('shake', {
    no: [0.82, 'it does not shake'],
    'at one speed': [0.09, 'it shakes at one speed'],
    'more than before': [0.09, 'it shakes more than before'],
  }),
  one('water', {
    dry: [0.76, 'it is dry inside'],
    some: [0.2, 'there is some water inside'],
    'a lot': [0.04, 'there is a lot of water inside'],
  }),
  one('throttle', {
    full: [0.97, 'the throttle opens fully'],
    half: [0.03, 'the throttle opens only part way'],
  }),
  one('spark', {
    strong: [0.94, 'the spark is strong'],
    weak: [0.04, 'the spark is weak or comes and goes'],
    none: [0.02, 'an engine has no spark'],
  }),
  one('cup', {
    'as it should': [0.95, 'the fuel runs as it should into a cup'],
    'one short': [0.025, 'one carburettor gets too little fuel'],
    'both short': [0.025, 'every carburettor gets too little fuel'],
  }),
  one('leak', {
    'no change': [0.95, 'a spray round the joints changes nothing'],
    'speed changes': [0.05, 'a spray round the joints changes the speed'],
  }),
  one('lifted', {
    same: [0.95, 'lifting the exhaust outlet clear changes nothing'],
    better: [0.05, 'it runs better with the exhaust outlet clear'],
  }),
  one('filter', {
    clean: [0.93, 'the air filter is clean'],
    'wet or dirty': [0.07, 'the air filter is wet or dirty'],
  }),
  one('gap', {
    'as made': [0.95, 'the tip gap is as made'],
    wide: [0.05, 'the tip gap is wide'],
  }),
  one('bore', {
    'as in the file': [0.97, 'the nozzle measures as in the file'],
    other: [0.03, 'the nozzle measures otherwise'],
  }),
  one('pitch', {
    'as in the file': [0.95, 'the pitch measures as in the file'],
    steeper: [0.025, 'the impeller is steeper than in the file'],
    shallower: [0.025, 'the impeller is shallower than in the file'],
  }),
  one('mixed', {
    'as the maker says': [0.96, 'the fuel is mixed as the maker says'],
    otherwise: [0.04, 'the fuel is old or mixed otherwise'],
  }),
  one('afloat', {
    'as in the file': [0.93, 'it weighs and floats as in the file'],
    'heavy or held': [0.07, 'it is heavier than in the file, or held by something'],
  }),
  one('step', {
    'no step': [0.94, 'the pull comes in evenly as the throttle opens'],
    'a step': [0.06, 'the pull comes in at one speed, at once'],
  }),
  one('rest', {
    'no change': [0.93, 'a rest changed nothing'],
    recovered: [0.07, 'it was right again after a rest'],
  }),
  one('climb', {
    'keeps up': [0.94, 'the pull grows with the speed as it should'],
    'stays behind': [0.06, 'the pull stays behind as the speed grows'],
  }),
  one('spare', {
    'no change': [0.95, 'a spare plug and lead changed nothing'],
    cured: [0.05, 'a spare plug and lead cured it'],
  }),
]

const byId = new Map(observables.map((o, i) => [o.id, i]))

/** Place of an observable in the list; -1 where there is none of that name. */
export const observableAt = (id: string): number => byId.get(id) ?? -1
