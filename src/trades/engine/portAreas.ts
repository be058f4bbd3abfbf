/**
 * Open areas of ports and their time-areas. Window with rounded corners, geometry derived below. Time-area: the
 * integral of open area over time per swept volume, as G. Jennings used it, Two-Stroke Tuner's Handbook (1973) and
 * magazine articles; the targets are his, quoted second-hand.
 */
import { type Crank, pistonTravel } from './geometry.ts'

/** A window in the cylinder wall, opened from its roof by the crown. Metres; width is of all windows together. */
export interface Window {
  width: number
  height: number
  corner: number
  windows: number
}

/** area that two rounded corners take from a strip of depth h at the edge, for one corner */
function cornerLoss(h: number, r: number): number {
  if (r <= 0) return 0
  if (h >= r) return r * r * (1 - Math.PI / 4)
  const k = r - h
  // strip minus the circular segment of that depth, half a corner pair
  const segment = (Math.PI * r * r) / 2 - k * Math.sqrt(Math.max(0, r * r - k * k)) - r * r * Math.asin(k / r)
  return r * h - 0.5 * segment
}

/** Area of a window uncovered to depth h from one edge, m2. Corners larger than half the window are cut back. */
export function windowArea(w: Window, h: number): number {
  const depth = Math.min(Math.max(h, 0), w.height)
  if (depth <= 0) return 0
  const r = Math.max(0, Math.min(w.corner, 0.5 * w.height, (0.5 * w.width) / w.windows))
  const far = depth > w.height - r ? cornerLoss(r, r) - cornerLoss(w.height - depth, r) : 0
  return w.width * depth - 2 * w.windows * (cornerLoss(depth, r) + far)
}

/** Depth uncovered of a window whose roof the crown passes at angle `opens`, limited to its height, m. */
export function roofDepth(c: Crank, opens: number, height: number, angle: number): number {
  const h = pistonTravel(c, angle) - pistonTravel(c, opens)
  return h <= 0 ? 0 : Math.min(h, height)
}

/** Depth uncovered of an inlet window that the skirt passes at `opens` before top dead centre, m. */
export function skirtDepth(c: Crank, opens: number, height: number, angle: number): number {
  const h = pistonTravel(c, opens) - pistonTravel(c, angle)
  return h <= 0 ? 0 : Math.min(h, height)
}

/** Angle integral of a port's open area between two angles, m2 rad (trapezoids of a quarter degree). */
export function angleArea(area: (angle: number) => number, from: number, to: number): number {
  const n = Math.max(8, Math.ceil((to - from) / (Math.PI / 720)))
  const h = (to - from) / n
  let sum = 0.5 * (area(from) + area(to))
  for (let i = 1; i < n; i++) sum += area(from + i * h)
  return sum * h
}

/** Specific time-area, s/m, of an angle-area at rpm. 1 s cm2/cm3 = 100 s/m. */
export const timeArea = (angleAreaValue: number, swept: number, rpm: number): number =>
  angleAreaValue / (swept * ((2 * Math.PI * rpm) / 60))

/** The rpm a port suits: where its time-area meets the target, s/m. */
export const happyRpm = (angleAreaValue: number, swept: number, target: number): number =>
  (60 * angleAreaValue) / (2 * Math.PI * swept * target)

/** Jennings' guidance for time-areas, s/m, low and high end (high suits high-revving engines). */
export const timeAreaTargets = {
  exhaust: { low: 0.014, high: 0.015 },
  transfer: { low: 0.008, high: 0.01 },
  inlet: { low: 0.014, high: 0.016 },
} as const
