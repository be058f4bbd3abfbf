/** What a builder may have seen or tried, from a list, beside free text. */
export interface Observation {
  id: string
  /** a question in a builder's words */
  asks: string
  /** the answers that may be given; leaving it out means "did not notice", never "no" */
  states: readonly string[]
}

/** Controlled list; the ids are kept in saved runs. */
export const observations: readonly Observation[] = [
  { id: 'start', asks: 'How did it start?', states: ['as usual', 'hard', 'only with choke', 'not at all'] },
  {
    id: 'choke',
    asks: 'What did the choke do while running?',
    states: ['helped', 'made it worse', 'no change', 'not tried'],
  },
  { id: 'stopped', asks: 'How did it stop?', states: ['by hand', 'faded out', 'at once', 'ran on'] },
  {
    id: 'lasted',
    asks: 'When did the trouble begin?',
    states: ['from the start', 'after a minute or two', 'when hot', 'in turns', 'when tilted'],
  },
  { id: 'cap', asks: 'Did it recover with the fuel cap loosened?', states: ['recovered', 'no change'] },
  { id: 'line', asks: 'What was in the fuel line?', states: ['full', 'bubbles', 'empty'] },
  {
    id: 'plug',
    asks: 'What did the plug look like?',
    states: ['tan', 'white', 'black and dry', 'wet', 'silver specks'],
  },
  { id: 'smoke', asks: 'How much smoke?', states: ['little', 'heavy', 'none'] },
  { id: 'pipes', asks: 'Were the exhausts equally hot?', states: ['both hot', 'one cold', 'both cool'] },
  {
    id: 'burble',
    asks: 'Did it burble, firing every second turn?',
    states: ['no', 'at part throttle', 'all the time'],
  },
  { id: 'stream', asks: 'How was the cooling water stream?', states: ['steady', 'weak', 'none', 'steaming'] },
  { id: 'jet', asks: 'How did the jet look?', states: ['solid', 'frothy', 'pulsing', 'weak'] },
  {
    id: 'intake',
    asks: 'What was on the intake grate?',
    states: ['clean', 'weed', 'stones', 'part blocked'],
  },
  { id: 'rotor', asks: 'How did the impeller look?', states: ['as made', 'nicked', 'rubbed', 'cracked'] },
  { id: 'coupling', asks: 'How did the coupling look?', states: ['as made', 'dust', 'slipped marks', 'hot'] },
  { id: 'shake', asks: 'Did it shake?', states: ['no', 'at one speed', 'more than before'] },
  { id: 'trim', asks: 'How did it sit when running?', states: ['level', 'bow up', 'bow down', 'leaned'] },
  { id: 'water', asks: 'Was there water inside afterwards?', states: ['dry', 'some', 'a lot'] },
  { id: 'throttle', asks: 'How far was the throttle open?', states: ['full', 'half', 'unsure'] },
  { id: 'nearby', asks: 'Was another engine running nearby?', states: ['no', 'yes'] },
]

export interface Observed {
  id: string
  state: string
  note?: string
}
