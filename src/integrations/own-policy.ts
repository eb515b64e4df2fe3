import { createHash } from 'node:crypto'
import { attributeText, type Edit, type PageElement } from './html-edits.ts'

/** Whether an element is a style, or a script that runs, with its text in the page. */
const isInPage = ({ tag, attributes }: PageElement): boolean =>
  tag === 'style' || (tag === 'script' && !attributes.has('src'))

/** How a policy names a text that may run, or style. */
export const sourceOf = (text: string): string =>
  `'sha256-${createHash('sha256').update(text).digest('base64')}'`

/**
 * Leaves in a page's policy only those texts that the page has in itself: Astro puts those of all pages into each.
 * @param html the page as it will be served
 */
export const ownPolicy = (html: string, elements: readonly PageElement[]): Edit[] => {
  const own = new Set(
    elements.filter(isInPage).map(({ inside }) => sourceOf(html.slice(inside.from, inside.to))),
  )
  return elements
    .filter(({ attributes }) => attributes.get('http-equiv') === 'content-security-policy')
    .map((element) => {
      const policy = element.attributes.get('content') ?? ''
      const kept = policy.replace(/ 'sha256-[^']+'/g, (source) => (own.has(source.trim()) ? source : ''))
      return { ...element.attributeSpan('content'), text: attributeText('content', kept) }
    })
}
