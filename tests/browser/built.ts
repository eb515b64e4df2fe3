import { readdirSync, readFileSync } from 'node:fs'
import { join, sep } from 'node:path'
import { parseHTML } from 'linkedom'
import { dist } from '@/setup/paths.mjs'

/** Where the built site is served, as the build was given it: its base path with a slash at both ends. */
const base = `/${process.env['BASE'] ?? ''}/`.replace(/\/+/g, '/')

/** All files of the built site, by their names. */
export const files: ReadonlySet<string> = new Set(
  readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) =>
      join(parentPath, name).slice(dist.length).split(sep).filter(Boolean).join('/'),
    ),
)

/** The names of those that end so. */
export const filesOf = (...ends: readonly string[]): string[] =>
  [...files].filter((name) => ends.some((end) => name.endsWith(end))).sort()

export const textOf = (name: string): string => readFileSync(join(dist, name), 'utf8')

const pages = new Map<string, Document>()

/** A built page, parsed. */
export const pageOf = (name: string): Document => {
  const page = pages.get(name) ?? parseHTML(textOf(name)).document
  pages.set(name, page)
  return page
}

/** The file that an address of the site leads to; null where there is none, or where it leads out of the site. */
export const fileAt = (url: URL): string | null => {
  if (!url.pathname.startsWith(base)) return null
  const path = decodeURIComponent(url.pathname.slice(base.length))
  const name = path === '' || path.endsWith('/') ? `${path}index.html` : path
  return files.has(name) ? name : null
}

/** The address of a built file, on a host of no meaning. */
export const addressOf = (name: string): URL =>
  new URL(base + name.replace(/(^|\/)index\.html$/, '$1'), 'http://site')
