/** PNG: W3C, Portable Network Graphics Specification, third edition (2025), 8-bit true colour, no filter. */
import { zlibSync } from 'fflate'

const crcTable = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1
  return c >>> 0
})

function crc(bytes: Uint8Array): number {
  let c = 0xffffffff
  for (const b of bytes) c = crcTable[(c ^ b) & 0xff]! ^ (c >>> 8)
  return (c ^ 0xffffffff) >>> 0
}

function chunk(name: string, body: Uint8Array): Uint8Array {
  const out = new Uint8Array(12 + body.length)
  const view = new DataView(out.buffer)
  view.setUint32(0, body.length)
  for (let i = 0; i < 4; i++) out[4 + i] = name.charCodeAt(i)
  out.set(body, 8)
  view.setUint32(8 + body.length, crc(out.subarray(4, 8 + body.length)))
  return out
}

/** A PNG file from rows of red, green, blue bytes, first row at the top. */
export function pngOf(rgb: Uint8Array, cols: number, rows: number): Uint8Array {
  if (rgb.length !== cols * rows * 3)
    throw new RangeError(`rgb: ${rgb.length} bytes, not ${cols} × ${rows} × 3`)
  const head = new Uint8Array(13)
  const view = new DataView(head.buffer)
  view.setUint32(0, cols)
  view.setUint32(4, rows)
  head[8] = 8
  head[9] = 2
  const raw = new Uint8Array(rows * (cols * 3 + 1))
  for (let r = 0; r < rows; r++)
    raw.set(rgb.subarray(r * cols * 3, (r + 1) * cols * 3), r * (cols * 3 + 1) + 1)
  const parts = [
    Uint8Array.of(137, 80, 78, 71, 13, 10, 26, 10),
    chunk('IHDR', head),
    chunk('IDAT', zlibSync(raw)),
    chunk('IEND', new Uint8Array(0)),
  ]
  const out = new Uint8Array(parts.reduce((n, p) => n + p.length, 0))
  let at = 0
  for (const p of parts) {
    out.set(p, at)
    at += p.length
  }
  return out
}

const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'

/** Base 64 (RFC 4648 section 4). */
export function base64Of(bytes: Uint8Array): string {
  let out = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const v = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0)
    out += letters[v >> 18]! + letters[(v >> 12) & 63]!
    out += i + 1 < bytes.length ? letters[(v >> 6) & 63]! : '='
    out += i + 2 < bytes.length ? letters[v & 63]! : '='
  }
  return out
}
