import { existsSync, readFileSync, statSync } from 'node:fs'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo, Server as NetServer } from 'node:net'
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

/** Answers a request with a file of `root`; nothing is answered to a request that names a host outside `hosts`. */
export function answerFiles(
  root: string,
  hosts: readonly string[],
  request: IncomingMessage,
  response: ServerResponse,
): void {
  // a name that was pointed at this machine from outside is not ours to answer
  const file = hosts.includes(hostOf(request)) ? fileFor(root, request.url ?? '/') : undefined
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { allow: 'GET, HEAD' }).end()
    return
  }
  if (!file) return void answerText(response, 404, 'Nothing here.')
  const hashed = /-[A-Za-z0-9_-]{8,}\.\w+$/.test(file)
  response.writeHead(200, {
    'content-type': types[extname(file)] ?? 'application/octet-stream',
    'cache-control': hashed ? 'public, max-age=31536000, immutable' : 'no-cache',
    'x-content-type-options': 'nosniff',
  })
  response.end(request.method === 'HEAD' ? undefined : readFileSync(file))
}

/** Name or number of the host that a request asks for, without its port. */
export const hostOf = (request: IncomingMessage): string => (request.headers.host ?? '').replace(/:\d+$/, '')

/** A short answer in words. */
export function answerText(response: ServerResponse, status: number, says: string): void {
  response.writeHead(status, {
    'content-type': 'text/plain; charset=utf-8',
    'x-content-type-options': 'nosniff',
    'cache-control': 'no-store',
  })
  response.end(`${says}\n`)
}

/** Serves a folder of static files on the loopback address only; port 0 takes a free one. */
export async function serveFolder(folder: string, port = 0): Promise<{ server: Server; address: string }> {
  const root = resolve(folder)
  const own = ['127.0.0.1', 'localhost', '[::1]']
  const server = createServer((request, response) => answerFiles(root, own, request, response))
  return { server, address: `http://127.0.0.1:${await listening(server, port, '127.0.0.1')}/` }
}

/** Has a server listen; answers its port. */
export function listening(server: NetServer, port: number, host: string): Promise<number> {
  return new Promise((done, fail) => {
    server.once('error', fail)
    server.listen(port, host, () => done((server.address() as AddressInfo).port))
  })
}
