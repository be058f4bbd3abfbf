/** What to measure before there is any run on the bench. */
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
