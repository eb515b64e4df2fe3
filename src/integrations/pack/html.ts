import { packedAddress } from '../../link/packed-address.ts'
import { attributeText, type Edit, edited, elementsOf, type PageElement } from '../html-edits.ts'
import type { PageScript } from './scripts.ts'

/** What a page's pack needs to know of the site. */
export interface Site {
  /** The site's own path, with a slash at its end. */
  readonly base: string
  /** The site's address where it was built for one. */
  readonly address: string | null
  /** Whether the site has this file. */
  readonly has: (name: string) => boolean
}

const fontFace = /@font-face\s*\{[^}]*\}/g

/** A style without its fonts, which one file holds for all pages. */
export const withoutFonts = (css: string): string => css.replace(fontFace, '')

/** The fonts of a style. */
export const fontsOf = (css: string): string[] => css.match(fontFace) ?? []

/** A page of the site and what is in it. */
export interface SitePage {
  /** The page's file, from the site's folder. */
  readonly name: string
  readonly html: string
  readonly elements: readonly PageElement[]
}

export const readPage = (name: string, html: string): SitePage => ({ name, html, elements: elementsOf(html) })

const insideOf = ({ html }: SitePage, { inside }: PageElement): string => html.slice(inside.from, inside.to)

/** The file of the page at one of the site's own addresses. */
const fileAt = (address: string, base: string): string => `${address.slice(base.length)}index.html`

const isSheet = ({ attributes }: PageElement): boolean =>
  (attributes.get('class') ?? '').split(' ').includes('sheet')

/** What a page's sheet has in it. Throws where the page has none. */
const sheetOf = (page: SitePage): string => {
  const sheet = page.elements.find(isSheet)
  if (!sheet) throw new Error(`${page.name} has no sheet to put into another page of the pack.`)
  return insideOf(page, sheet)
}

/**
 * A page with all in it that a server's page fetches from others of the site: a page from files may fetch nothing.
 * @param read reads a page by its file's name
 */
export const gathered = (page: SitePage, base: string, read: (name: string) => SitePage): SitePage => {
  const edits = page.elements.flatMap((element): Edit[] => {
    const from = element.attributes.get('data-from')
    if (element.attributes.get('data-until') === 'gathered') return [{ ...element.span, text: '' }]
    if (from === undefined) return []
    return [
      { ...element.attributeSpan('data-from'), text: '' },
      { ...element.inside, text: sheetOf(read(fileAt(from, base))) },
    ]
  })
  return edits.length === 0 ? page : readPage(page.name, edited(page.html, edits))
}

/** The rules of all fonts of a page's own styles. */
export const pageFonts = (page: SitePage): string[] =>
  page.elements.flatMap((element) => (element.tag === 'style' ? fontsOf(insideOf(page, element)) : []))

/** The site's own address as a page names it; null where the site was built for none. */
export const siteAddress = ({ elements }: SitePage): string | null =>
  elements
    .find(({ tag, attributes }) => tag === 'link' && attributes.get('rel') === 'canonical')
    ?.attributes.get('href') ?? null

const isModule = ({ tag, attributes }: PageElement): boolean =>
  tag === 'script' && ['module', 'deferred'].includes(attributes.get('type') ?? '')

/** The attributes of module scripts that the pack can do without. */
const known = new Set(['type', 'src', 'data-with'])

const scriptOf = (page: SitePage, element: PageElement): PageScript => {
  const strange = [...element.attributes.keys()].find((name) => !known.has(name))
  if (strange !== undefined)
    throw new Error(`${page.name} has a module script with “${strange}”, which the pack does not know.`)
  const src = element.attributes.get('src')
  return src === undefined ? { text: insideOf(page, element) } : { src }
}

/** The module scripts of a page, in their order. Throws where one has an attribute that the pack would lose. */
export const scriptsOf = (page: SitePage): PageScript[] =>
  page.elements.filter(isModule).map((element) => scriptOf(page, element))

/** Of no use without a server, and some make a browser complain; to a policy files are strangers to each other. */
const isNeedless = ({ tag, attributes }: PageElement): boolean => {
  switch (tag) {
    case 'link':
      return ['expect', 'apple-touch-icon'].includes(attributes.get('rel') ?? '')
    case 'meta':
      return (
        (attributes.get('property') ?? '').startsWith('og:image') ||
        attributes.get('http-equiv') === 'content-security-policy'
      )
    case 'script':
      return attributes.get('id') === 'end'
    default:
      return false
  }
}

/** The way from a page's file to the site's folder. */
const rootOf = (name: string): string => '../'.repeat(name.split('/').length - 1) || './'

/** Makes an address of ours lead to its file, from a page; leaves any other text as it is. */
const leadTo =
  (site: Site, root: string) =>
  (text: string): string => {
    const path = (text.split(/[?#]/)[0] ?? '').slice(site.base.length)
    const folder = path === '' || path.endsWith('/') ? path : `${path}/`
    const isOurs = text.startsWith(site.base) && (site.has(path) || site.has(`${folder}index.html`))
    return isOurs ? packedAddress(text, site.base, root) : text
  }

/** Data with the texts in it changed, at whatever depth. */
const mapTexts = (data: unknown, change: (text: string) => string): unknown => {
  if (typeof data === 'string') return change(data)
  if (Array.isArray(data)) return data.map((each) => mapTexts(each, change))
  if (typeof data !== 'object' || data === null) return data
  return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, mapTexts(value, change)]))
}

/** The addresses in data that a page carries as JSON, led to their files. */
const packedJson = (json: string, packed: (text: string) => string): string =>
  JSON.stringify(mapTexts(JSON.parse(json), packed))

/** The attributes of an element with their addresses led to files. Throws where a link leads to no file of the site. */
const attributeEdits = (element: PageElement, name: string, site: Site): Edit[] => {
  const root = rootOf(name)
  const packed = leadTo(site, root)
  return [...element.attributes].flatMap(([attribute, value]) => {
    const isLink = attribute === 'href' || attribute === 'src'
    const isData = attribute.startsWith('data-') && /^[[{]/.test(value)
    const made = isData
      ? packedJson(value, packed)
      : isLink && !value.startsWith('/')
        ? packedAddress(value, site.base, root)
        : packed(value)
    if (isLink && made.startsWith('/'))
      throw new Error(`${name} of the pack leads nowhere: ${attribute}="${made}"`)
    return made === value
      ? []
      : [{ ...element.attributeSpan(attribute), text: attributeText(attribute, made) }]
  })
}

/** What of an element is changed or left out. */
const elementEdits = (page: SitePage, element: PageElement, site: Site): Edit[] => {
  if (isNeedless(element) || isModule(element)) return [{ ...element.span, text: '' }]
  const edits = attributeEdits(element, page.name, site)
  const inside = insideOf(page, element)
  if (element.tag === 'style') edits.push({ ...element.inside, text: withoutFonts(inside) })
  if (element.tag === 'script' && element.attributes.get('type') === 'application/json') {
    const json = packedJson(inside, leadTo(site, rootOf(page.name)))
    // A “<” in the data must not end the script that carries it.
    edits.push({ ...element.inside, text: json.replaceAll('<', '\\u003c') })
  }
  return edits
}

/**
 * A page as it opens from files: with relative addresses, one plain script, and nothing that asks a server.
 * @param script the file with the page's scripts
 */
export const packedPage = (page: SitePage, script: string, site: Site): string => {
  const root = rootOf(page.name)
  // Throws where a script would be lost.
  scriptsOf(page)
  const edits = page.elements.flatMap((element) => elementEdits(page, element, site))
  for (const { tag, startTag, inside } of page.elements) {
    if (tag === 'html') {
      const about = [`data-pack-base="${site.base}"`, `data-pack-root="${root}"`]
      if (site.address !== null) about.push(`data-pack-site="${site.address}"`)
      const at = startTag.from + '<html'.length
      edits.push({ from: at, to: at, text: ` ${about.join(' ')}` })
    }
    if (tag === 'head') {
      const parts = `<link rel="stylesheet" href="${root}fonts.css"><script defer src="${root}${script}"></script>`
      edits.push({ from: inside.to, to: inside.to, text: parts })
    }
  }
  return edited(page.html, edits)
}
