/** The usual cautions of thin decks, foam and printed parts; common practice, no source. */
export const cautions: readonly string[] = [
  'What is computed is a model of sheet, foam and glue as they should be. Try every bay on the bench before you stand on it afloat: lay it on its edges, load it with sandbags to twice your weight, look for dents, cracks and glue letting go.',
  'Polystyrene foam softens at about 75 °C, burns and gives off poisonous smoke; petrol dissolves it. Keep it clear of hot parts and seal it in where fuel may drip. Extinguisher at hand for the first runs.',
  'Welding: mask, dry gloves, fresh air; never weld over foam, or on a tank or pipe that has held petrol. A weld takes away much of the strength of hardened aluminium beside it.',
  'A printed impeller may burst: keep ring and duct closed round it, nobody in line with it at speed, and look at its blade roots for whitening before every day on the water.',
]

export const how: readonly string[] = [
  'Each bay is a plate on its edges under a foot or a heel: standing with the whole weight on one foot, a step of twice the rider’s weight on 80 mm, a jump of four times on both feet. Beyond half its thickness a thin sheet carries by hanging like a net as well as by bending; both are in the answer.',
  'On foam the sheet spreads the load over a bed of springs; the foam’s pressure is held against its least strength by the standard, less for loads that come again and again, less when warm. A sandwich bends as two faces on a core that shears.',
  'Margin is what a part may have over what it has: standing up to 0.6 of yield, a step up to yield, a jump up to breaking. Beside welds the softened strength counts.',
  'A frame across stringers is a beam on many springs; the hat is 1.5 mm sheet, 30 mm wide. A hot part radiates on the foam as a long cylinder does, in still air; a plate or a wrap comes between.',
  'The search tries the usual sheets on hats, on foam, as a sandwich and alone, lightest first, and keeps those that hold every load and give no more than a fiftieth of the short side underfoot.',
]
