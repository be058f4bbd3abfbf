/**
 * Colours. Series: M. Okabe and K. Ito, "Color Universal Design: how to make figures and presentations
 * that are friendly to colorblind people" (2002, revised 2008), eight-colour set.
 * Contrast: W3C, Web Content Accessibility Guidelines 2.1, relative luminance and contrast ratio.
 * Sequential map: D. A. Green, "A colour scheme for the display of astronomical intensity images",
 * Bulletin of the Astronomical Society of India 39 (2011) 289, equation 2.
 */
export const okabeIto = {
  black: '#000000',
  orange: '#e69f00',
  skyBlue: '#56b4e9',
  green: '#009e73',
  yellow: '#f0e442',
  blue: '#0072b2',
  vermillion: '#d55e00',
  purple: '#cc79a7',
} as const

export const paper = '#ffffff'
export const ink = '#1b1b1b'
export const quiet = '#5c5c5c'
export const faint = '#dcdcdc'

/** Order in which series take colours: strong contrast first, yellow last as it is weak on white. */
export const seriesColours: readonly string[] = [
  okabeIto.blue,
  okabeIto.vermillion,
  okabeIto.green,
  okabeIto.purple,
  okabeIto.orange,
  okabeIto.skyBlue,
  okabeIto.black,
  okabeIto.yellow,
]

export const markerShapes = ['circle', 'square', 'triangle', 'diamond', 'cross', 'plus'] as const
export type MarkerShape = (typeof markerShapes)[number]

type Rgb = [number, number, number]

/** `#rrggbb` to three numbers, 0–255; RangeError for any other spelling. */
export function rgbOf(colour: string): Rgb {
  const m = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(colour)
  if (!m) throw new RangeError(`colour: "${colour}" is not of the form #rrggbb`)
  return [Number.parseInt(m[1]!, 16), Number.parseInt(m[2]!, 16), Number.parseInt(m[3]!, 16)]
}

function hexOf(rgb: Rgb): string {
  return `#${rgb
    .map((v) =>
      Math.round(Math.min(255, Math.max(0, v)))
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`
}

/** WCAG relative luminance, 0 black to 1 white. */
function luminance(colour: string): number {
  const [r, g, b] = rgbOf(colour).map((v) => {
    const c = v / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  }) as Rgb
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** WCAG contrast ratio of two colours, 1 to 21. */
export function contrast(a: string, b: string): number {
  const [la, lb] = [luminance(a), luminance(b)]
  return (Math.max(la, lb) + 0.05) / (Math.min(la, lb) + 0.05)
}

/** The same hue, darkened until text in it reads on paper (contrast 4.5 or more). */
export function inkOf(colour: string): string {
  let rgb = rgbOf(colour)
  let dark = hexOf(rgb)
  while (contrast(dark, paper) < 4.5) {
    rgb = rgb.map((v) => v * 0.95) as Rgb
    dark = hexOf(rgb)
  }
  return dark
}

/** Sequential map for levels: part 0 is paper-white, 1 is near black; lightness falls all the way. */
export function levelColour(part: number): Rgb {
  const light = 1 - Math.min(1, Math.max(0, Number.isFinite(part) ? part : 0))
  const start = 0.5
  const turns = -1.5
  const hue = 1
  const phi = 2 * Math.PI * (start / 3 + turns * light)
  const a = (hue * light * (1 - light)) / 2
  const [c, s] = [Math.cos(phi), Math.sin(phi)]
  const channel = (p: number, q: number) => 255 * Math.min(1, Math.max(0, light + a * (p * c + q * s)))
  return [channel(-0.14861, 1.78277), channel(-0.29227, -0.90649), channel(1.97294, 0)]
}

/** Two-sided map for signed values: -1 blue, 0 paper, +1 vermillion. */
export function signedColour(part: number): Rgb {
  const p = Math.min(1, Math.max(-1, Number.isFinite(part) ? part : 0))
  const end = rgbOf(p < 0 ? okabeIto.blue : okabeIto.vermillion)
  return end.map((v) => 255 + (v - 255) * Math.abs(p)) as Rgb
}
