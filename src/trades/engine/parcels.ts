/**
 * A plug of gas pushed back through a port: parcels laid down in order and taken up again last in, first out,
 * as a plug moves in and out of a duct. Parcels keep T/p^0.26, so a squeeze in between warms them as it should.
 * The gas itself stays counted in the volume it was pushed into; parcels only remember what comes back first.
 */
export interface Parcels {
  count: number
  /** 3 a parcel: mass kg, T/p^0.26, fresh fraction */
  readonly data: Float64Array
}

const most = 400
export const warmth = 0.26

export const createParcels = (): Parcels => ({ count: 0, data: new Float64Array(3 * most) })

/** Lays a parcel on top; when full, the top parcel takes it in. */
export function push(p: Parcels, mass: number, t: number, y: number, pressure: number): void {
  const theta = t * Math.exp(-warmth * Math.log(pressure))
  if (p.count < most) {
    const k = 3 * p.count++
    p.data[k] = mass
    p.data[k + 1] = theta
    p.data[k + 2] = y
    return
  }
  const k = 3 * (most - 1)
  const was = p.data[k]!
  const sum = was + mass
  p.data[k + 1] = (p.data[k + 1]! * was + theta * mass) / sum
  p.data[k + 2] = (p.data[k + 2]! * was + y * mass) / sum
  p.data[k] = sum
}

/** Temperature of the top parcel at the given pressure; call only when count > 0. */
export const topT = (p: Parcels, pressure: number): number =>
  p.data[3 * p.count - 2]! * Math.exp(warmth * Math.log(pressure))

/** Fresh fraction of the top parcel; call only when count > 0. */
export const topY = (p: Parcels): number => p.data[3 * p.count - 1]!

/** Takes mass off the top, through as many parcels as it needs. */
export function pop(p: Parcels, mass: number): void {
  let left = mass
  while (left > 0 && p.count > 0) {
    const k = 3 * (p.count - 1)
    if (p.data[k]! > left) {
      p.data[k] = p.data[k]! - left
      return
    }
    left -= p.data[k]!
    p.count--
  }
}
