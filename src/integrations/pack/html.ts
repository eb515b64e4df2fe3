import { packedAddress } from './address.ts'
import type { PageScript } from './scripts.ts'

/** What a page's pack needs to know of the site. */
export interface Site {
  /** The site's own path, with a stroke at its end. */
  readonly base: string
  /** The site's address where it was built for one. */
  readonly address: string | null
  /** Whether the site has this file. */
  readonly has: (name: string) => boolean
}

const module =
  /<script type="(?:module|later)"(?: src="([^"]*)")?(?: data-with="[^"]*")?>([\s\S]*?)<\/script>/g
const fontFace = /@font-face\s*\{[^}]*\}/g

/** Of no use without a server, and some make a browser complain; to a policy files are strangers to each other. */
const needless =
  /<link rel="(?:expect|apple-touch-icon)"[^>]*>|<meta (?:property="og:image|http-equiv="content-security-policy")[^>]*>|<script id="end">[\s\S]*?<\/script>/g

/** A style without its fonts, which one file holds for all pages. */
export const withoutFonts = (css: string): string => css.replace(fontFace, '')

/** The fonts of a page's styles. */
export const fontsOf = (css: string): string[] => css.match(fontFace) ?? []

/** The module scripts of a page, in their order. */
export const scriptsOf = (html: string): PageScript[] =>
  [...html.matchAll(module)].map(([, src, text = '']) => (src === undefined ? { text } : { src }))

/** The way from a page's file to the site's folder. */
const rootOf = (name: string): string => '../'.repeat(name.split('/').length - 1) || './'

/**
 * A page as it opens from files: with relative addresses, one plain script, and nothing that asks a server.
 * @param name the page's file, from the site's folder
 * @param script the file with the page's scripts
 */
export const packedPage = (html: string, name: string, script: string, site: Site): string => {
  const root = rootOf(name)
  const isOurs = (address: string): boolean => {
    const path = (address.split(/[?#]/)[0] ?? '').slice(site.base.length)
    const folder = path === '' || path.endsWith('/') ? path : `${path}/`
    return address.startsWith(site.base) && (site.has(path) || site.has(`${folder}index.html`))
  }
  const packed = (address: string): string =>
    isOurs(address) ? packedAddress(address, site.base, root) : address
  const start = [
    `<html data-pack-base="${site.base}" data-pack-root="${root}"`,
    ...(site.address ? [`data-pack-site="${site.address}"`] : []),
  ].join(' ')
  const made = withoutFonts(html)
    .replace(needless, '')
    .replace(module, '')
    .replace(/ (href|src|data-[a-z-]+)="([^"]*)"/g, (_, attribute: string, value: string) => {
      const isLink = attribute === 'href' || attribute === 'src'
      return ` ${attribute}="${isLink && !value.startsWith('/') ? packedAddress(value, site.base, root) : packed(value)}"`
    })
    // Addresses in the data that a page carries, in an attribute or in a script.
    .replace(
      /("|&quot;|&#34;)(\/[^"&<>\s]*)\1/g,
      (_, quote: string, address: string) => quote + packed(address) + quote,
    )
    .replace('<html', start)
    .replace(
      '</head>',
      `<link rel="stylesheet" href="${root}fonts.css"><script defer src="${root}${script}"></script></head>`,
    )
  if (/type="(module|later)"/.test(made))
    throw new Error(`${name} has a module script that the pack does not know.`)
  const [lost] = / (?:href|src)="\/[^"]*"/.exec(made) ?? []
  if (lost) throw new Error(`${name} of the pack leads nowhere:${lost}`)
  return made
}
