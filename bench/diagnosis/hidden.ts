/**
 * What is really wrong with a craft in a simulated session, as states of its parts and not as a table of signs: mixture, spark, compression
 * and water by engine, an open joint, air or weed in the pump, weight in the hull. How often each fault comes: authored judgement.
 */

export interface EngineState {
  /** of the torque it would give */
  torque: number
  /** of the speeds of its curve */
  rotation: number
  fires: boolean
  /** air over what burns the fuel: 0.87 goes best */
  mixture: number
  /** share of cycles without a spark */
  missed: number
  /** 0 none to 1 as new */
  compression: number
  /** 0 dry to 1 full, in the exhaust; and in carburettor and plug */
  wetPipe: number
  wetPlug: number
  /** extra heat, 0 to 1 */
  heat: number
  leak: boolean
  choked: number
  oil: number
  locked: boolean
  shut: boolean
}

export interface Hidden {
  engines: EngineState[]
  load: number
  thrust: number
  drag: number
  /** engines in front of the open joint; 0 none */
  open: number
  slips: number
  air: number
  weed: number
  gap: boolean
  bore: boolean
  pitch: -1 | 0 | 1
  trim: -1 | 0 | 1
  heavy: boolean
  bilge: number
  ventShut: boolean
  jets: 'clear' | 'one short' | 'both short'
  line: 'full' | 'bubbles' | 'empty'
  filter: boolean
  mixed: boolean
  went: boolean
  gravel: boolean
  stepped: boolean
  coupling: 'as made' | 'slipped marks' | 'bolts out' | 'broken'
  lever: boolean
}

export const sound = (): EngineState => ({
  torque: 1,
  rotation: 1,
  fires: true,
  mixture: 0.88,
  missed: 0,
  compression: 1,
  wetPipe: 0,
  wetPlug: 0,
  heat: 0,
  leak: false,
  choked: 0,
  oil: 0,
  locked: false,
  shut: false,
})

export const nothing = (engines: number): Hidden => ({
  engines: Array.from({ length: engines }, sound),
  load: 1,
  thrust: 1,
  drag: 1,
  open: 0,
  slips: 0,
  air: 0,
  weed: 0,
  gap: false,
  bore: false,
  pitch: 0,
  trim: 0,
  heavy: false,
  bilge: 0,
  ventShut: false,
  jets: 'clear',
  line: 'full',
  filter: true,
  mixed: true,
  went: false,
  gravel: false,
  stepped: false,
  coupling: 'as made',
  lever: true,
})

export type Begins = 'from the start' | 'after a minute or two' | 'when hot' | 'in turns' | 'suddenly'

/** A true fault: what it does to the hidden state, and when it begins. */
export interface Fault {
  cause: string
  begins: Begins
  apply: (h: Hidden) => void
  /** words its making left in the log, where any */
  log?: string | undefined
  common?: boolean | undefined
}
