import { createHash } from 'node:crypto'
import { attributeText, type Edit, type PageElement } from './html-edits.ts'

/** In how many pages the same styles are at least, to be a file that a browser fetches once for all of them. */
const fewestPages = 5

/** A built page's text with its elements. */
export interface BuiltPage {
  readonly html: string
  readonly elements: readonly PageElement[]
}

const stylesOf = ({ html, elements }: BuiltPage): { readonly element: PageElement; readonly css: string }[] =>
  elements
    .filter(({ tag }) => tag === 'style')
    .map((element) => ({ element, css: html.slice(element.inside.from, element.inside.to) }))

/** The styles that several pages have in themselves, each with the name of the file that it is to be. */
export const sharedStyles = (pages: readonly BuiltPage[]): ReadonlyMap<string, string> => {
  const counts = new Map<string, number>()
  for (const css of pages.flatMap((page) => [...new Set(stylesOf(page).map((each) => each.css))]))
    counts.set(css, (counts.get(css) ?? 0) + 1)
  return new Map(
    [...counts]
      .filter(([, count]) => count >= fewestPages)
      .map(([css]) => [css, `shared.${createHash('sha256').update(css).digest('hex').slice(0, 8)}.css`]),
  )
}

/** Puts in the place of a page's shared styles links to their files. */
export const linkStyles = (page: BuiltPage, shared: ReadonlyMap<string, string>, folder: string): Edit[] =>
  stylesOf(page).flatMap(({ element, css }) => {
    const file = shared.get(css)
    return file === undefined
      ? []
      : [{ ...element.span, text: `<link rel="stylesheet" ${attributeText('href', folder + file)}>` }]
  })
