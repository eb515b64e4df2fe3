import { existsSync, statSync } from 'node:fs'
import { extname, join } from 'node:path'
import { dist } from '../../src/setup/paths.mjs'

/** @type {Readonly<Record<string, string>>} */
const types = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json',
}

/**
 * The file of the built site that a request is answered with.
 * @param {string} base the path under which the site is served, with a slash at both ends
 * @param {string} url the request's address, without its host
 * @returns {{ name: string, path: string, type: string, status: 200 | 404 }}
 */
export function siteFile(base, url) {
  const address = decodeURIComponent(new URL(url, 'http://x').pathname)
  const place = address.slice(base.length)
  const asked = place === '' || place.endsWith('/') ? `${place}index.html` : place
  const path = join(dist, asked)
  const isThere = address.startsWith(base) && existsSync(path) && statSync(path).isFile()
  const name = isThere ? asked : '404.html'
  return {
    name,
    path: join(dist, name),
    type: types[extname(name)] ?? 'text/plain',
    status: isThere ? 200 : 404,
  }
}
