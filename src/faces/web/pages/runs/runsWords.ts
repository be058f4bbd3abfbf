export const cautions = [
  'Keep hands, hair and clothes away from the jet, the shaft and the pipe; they are hot or turning while you record.',
  'Run engines outdoors only: exhaust holds carbon monoxide, which has no smell and kills in closed and half-closed places.',
  'In a tied-up pull the rope can part or the post give way: stay out of its line, wear a life jacket, and have somebody beside the stop switch.',
  'A phone held in the hand belongs to somebody who is not steering.',
]

export const how = [
  'The recording is brought to 4000 samples a second and looked at in windows of 0.36 s. In each, combs of evenly spaced lines are fitted, allowing for changing speed; the likeliest path of one or two combs through the whole recording is what you see.',
  'One firing a turn is taken for a two-stroke single; the number of cylinders comes from the craft file. Locked points are kept exactly, and what lies between them is found again.',
]

export const measures = [
  {
    what: 'record half a minute tied up at full throttle, from 3 to 10 m, out of the wind, fingers off the microphones',
    with: 'phone, as a plain video or a voice recording',
    minutes: 10,
  },
  {
    what: 'read the pull three times at full throttle',
    with: 'luggage scale between rope and post',
    minutes: 10,
  },
]
