/** What a builder may have seen or tried, from a list, beside free text. */
export interface Observation {
  id: string
  /** a question in a builder's words */
  asks: string
  /** what the answer parts from what: "Tells fuel from spark." */
  tells: string
  /** the answers that may be given; leaving it out means "did not notice", never "no" */
  states: readonly string[]
}

/** Controlled list; the ids are kept in saved runs. */
export const observations: readonly Observation[] = [
  {
    id: 'start',
    asks: 'How did it start?',
    tells: 'fuel and spark from all that comes only under load',
    states: ['as usual', 'hard', 'only with choke', 'not at all'],
  },
  {
    id: 'choke',
    asks: 'What did the choke do while running?',
    tells: 'too little fuel (it helps) from too much (it makes it worse)',
    states: ['helped', 'made it worse', 'no change', 'not tried'],
  },
  {
    id: 'opening',
    asks: 'How did it take the throttle?',
    tells:
      'too little fuel and too steep an impeller (it bogs) from a cable set too short (it takes it cleanly)',
    states: ['cleanly', 'bogged', 'only part way', 'hung'],
  },
  {
    id: 'raced',
    asks: 'Did it race?',
    tells: 'air in the pump (it came back) from a coupling that slips or opened (it stayed)',
    states: ['no', 'came back', 'stayed'],
  },
  {
    id: 'engines',
    asks: 'Did the engines run alike?',
    tells: 'what is wrong with one engine from what is wrong with pump, hull or fuel',
    states: ['alike', 'unlike', 'only one'],
  },
  {
    id: 'sounded',
    asks: 'What did it sound like?',
    tells: 'spark (missing) from mixture (burbling, pinking) and water (muffled)',
    states: ['clean', 'burbling', 'missing', 'pinking', 'muffled', 'gravelly'],
  },
  {
    id: 'idle',
    asks: 'How did it idle?',
    tells: 'air leaking in (high) from water or spark (it dies)',
    states: ['as usual', 'high', 'low', 'dies'],
  },
  {
    id: 'hand',
    asks: 'How did it turn over by hand?',
    tells: 'a seized or worn engine from one that only does not fire',
    states: ['free', 'stiff', 'locked', 'no compression'],
  },
  {
    id: 'heat',
    asks: 'What was hotter or cooler than usual?',
    tells: 'lean or short of cooling (hot) from a coupling that slips and an engine that did not fire',
    states: ['as usual', 'very hot', 'coupling hot', 'one cool'],
  },
  {
    id: 'stopped',
    asks: 'How did it stop?',
    tells: 'fuel that ran out (faded) from spark or seizure (at once)',
    states: ['by hand', 'faded out', 'at once', 'ran on'],
  },
  {
    id: 'lasted',
    asks: 'When did the trouble begin?',
    tells: 'a blocked vent (after minutes) from heat, and a loose wire (in turns) from a lasting fault',
    states: ['from the start', 'after a minute or two', 'when hot', 'in turns', 'suddenly', 'when tilted'],
  },
  {
    id: 'cap',
    asks: 'Did it recover with the fuel cap loosened?',
    tells: 'a blocked tank vent from every other lack of fuel',
    states: ['recovered', 'no change'],
  },
  {
    id: 'line',
    asks: 'What was in the fuel line?',
    tells: 'air in the line from a blocked jet',
    states: ['full', 'bubbles', 'empty'],
  },
  {
    id: 'plug',
    asks: 'What did the plug look like?',
    tells: 'lean (white) from rich (black), and both from metal of a piston (silver)',
    states: ['tan', 'white', 'black and dry', 'wet', 'water drops', 'silver specks'],
  },
  {
    id: 'smoke',
    asks: 'How much smoke?',
    tells: 'rich or much oil (heavy) from lean (none)',
    states: ['little', 'heavy', 'none', 'rubber', 'steam'],
  },
  {
    id: 'pipes',
    asks: 'Were the exhausts equally hot?',
    tells: 'one engine that did not fire from two that are weak',
    states: ['both hot', 'one cold', 'both cool'],
  },
  {
    id: 'burble',
    asks: 'Did it burble, firing every second turn?',
    tells: 'a rich mixture or alternate firing from an octave heard wrongly',
    states: ['no', 'at part throttle', 'all the time'],
  },
  {
    id: 'stream',
    asks: 'How was the cooling water stream?',
    tells: 'heat from all that needs none',
    states: ['steady', 'weak', 'none', 'steaming'],
  },
  {
    id: 'jet',
    asks: 'How did the jet look?',
    tells: 'air drawn in (frothy) and a blocked intake (weak) from a weak engine (solid)',
    states: ['solid', 'frothy', 'pulsing', 'weak'],
  },
  {
    id: 'intake',
    asks: 'What was on the intake grate?',
    tells: 'weed or stones in the pump from a pump that draws air',
    states: ['clean', 'weed', 'stones', 'part blocked'],
  },
  {
    id: 'rotor',
    asks: 'How did the impeller look?',
    tells: 'a worn or hurt impeller from an engine that is weak',
    states: ['as made', 'nicked', 'rubbed', 'cracked'],
  },
  {
    id: 'coupling',
    asks: 'How did the coupling look?',
    tells: 'a slipping coupling from a pump that draws air, both of which race',
    states: ['as made', 'dust', 'slipped marks', 'hot', 'bolts out', 'broken'],
  },
  {
    id: 'shake',
    asks: 'Did it shake?',
    tells: 'a bent shaft or a hurt blade from a steady loss',
    states: ['no', 'at one speed', 'more than before'],
  },
  {
    id: 'trim',
    asks: 'How did it sit when running?',
    tells: 'drag and weight in the wrong place from a lack of thrust',
    states: ['level', 'bow up', 'bow down', 'leaned'],
  },
  {
    id: 'water',
    asks: 'Was there water inside afterwards?',
    tells: 'the weight of water taken in from drag',
    states: ['dry', 'some', 'a lot'],
  },
  {
    id: 'throttle',
    asks: 'How far was the throttle open?',
    tells: 'a half-open throttle from a weak engine',
    states: ['full', 'half', 'unsure'],
  },
  {
    id: 'nearby',
    asks: 'Was another engine running nearby?',
    tells: 'another boat’s engine from a second one of yours',
    states: ['no', 'yes'],
  },
]

export interface Observed {
  id: string
  state: string
  note?: string
}
