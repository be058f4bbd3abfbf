import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { extname, join, normalize, resolve, sep } from 'node:path'

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.wasm': 'application/wasm',
  '.woff2': 'font/woff2',
  '.yaml': 'text/yaml; charset=utf-8',
  '.wav': 'audio/wav',
  '.txt': 'text/plain; charset=utf-8',
}

/** The file a request path names inside `root`, or undefined when there is none or it lies outside. */
export function fileFor(root: string, url: string): string | undefined {
  let path: string
  try {
    path = decodeURIComponent(url.split(/[?#]/)[0]!)
  } catch {
    return undefined
  }
  if (path.includes('\0') || path.includes('\\')) return undefined
  const file = join(root, normalize(path.endsWith('/') ? `${path}index.html` : path))
  if (!file.startsWith(root + sep)) return undefined
  return existsSync(file) && statSync(file).isFile() ? file : undefined
}

/** Serves a folder of static files on the loopback address only; port 0 takes a free one. */
export function serveFolder(folder: string, port = 0): Promise<{ server: Server; address: string }> {
  const root = resolve(folder)
  const server = createServer((request, response) => {
    const host = (request.headers.host ?? '').replace(/:\d+$/, '')
    // a name that was pointed at this machine from outside is not ours to answer
    const file = ['127.0.0.1', 'localhost', '[::1]'].includes(host)
      ? fileFor(root, request.url ?? '/')
      : undefined
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { allow: 'GET, HEAD' }).end()
      return
    }
    if (!file) {
      response.writeHead(404, { 'content-type': 'text/plain; charset=utf-8' }).end('Nothing here.\n')
      return
    }
    const hashed = /-[A-Za-z0-9_-]{8,}\.\w+$/.test(file)
    response.writeHead(200, {
      'content-type': types[extname(file)] ?? 'application/octet-stream',
      'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
      'x-content-type-options': 'nosniff',
    })
    response.end(request.method === 'HEAD' ? undefined : readFileSync(file))
  })
  return new Promise((done, fail) => {
    server.once('error', fail)
    server.listen(port, '127.0.0.1', () => {
      done({ server, address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/` })
    })
  })
}
