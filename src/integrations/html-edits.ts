import { type DefaultTreeAdapterTypes, parse } from 'parse5'

/** A stretch of a text, as offsets from its start; `to` is the first that is no part of it. */
interface Span {
  readonly from: number
  readonly to: number
}

/** An element of a page, with its places in the page's text. */
export interface PageElement {
  readonly tag: string
  /** Its attributes in their order, as they read: character references resolved. */
  readonly attributes: ReadonlyMap<string, string>
  /** The whole element with its tags; only its start tag where it has no end tag. */
  readonly span: Span
  readonly startTag: Span
  /** What is between its tags; empty where it has no end tag. */
  readonly inside: Span
  /** Where an attribute is, with its name. Throws where the element has none of that name. */
  readonly attributeSpan: (name: string) => Span
}

type Node = DefaultTreeAdapterTypes.Node
type Element = DefaultTreeAdapterTypes.Element

const pageElement = ({ tagName, attrs, sourceCodeLocation }: Element): PageElement | null => {
  // Elements that a parser adds by itself are nowhere in the text.
  if (!sourceCodeLocation) return null
  const { startOffset: from, endOffset: to, endTag } = sourceCodeLocation
  const startTag = sourceCodeLocation.startTag ?? sourceCodeLocation
  return {
    tag: tagName,
    attributes: new Map(attrs.map(({ name, value }) => [name, value])),
    span: { from, to },
    startTag: { from: startTag.startOffset, to: startTag.endOffset },
    inside: { from: startTag.endOffset, to: endTag?.startOffset ?? startTag.endOffset },
    attributeSpan: (name) => {
      const place = sourceCodeLocation.attrs?.[name.toLowerCase()]
      if (!place) throw new Error(`<${tagName}> has no “${name}” in the page’s text`)
      return { from: place.startOffset, to: place.endOffset }
    },
  }
}

/** The elements of a page in their order, those in its templates and for browsers without scripts included. */
export const elementsOf = (html: string): PageElement[] => {
  const found: PageElement[] = []
  const visit = (node: Node): void => {
    if ('tagName' in node) {
      const element = pageElement(node)
      if (element) found.push(element)
    }
    if ('content' in node) visit(node.content)
    if ('childNodes' in node) node.childNodes.forEach(visit)
  }
  visit(parse(html, { sourceCodeLocationInfo: true, scriptingEnabled: false }))
  return found
}

/** A stretch of a text and what is to be in its place. */
export interface Edit extends Span {
  readonly text: string
}

/** A text with edits made, all else left byte for byte. Throws where two of them overlap. */
export const edited = (text: string, edits: readonly Edit[]): string => {
  let end = 0
  const parts: string[] = []
  for (const edit of [...edits].sort((one, other) => one.from - other.from)) {
    if (edit.from < end) throw new Error(`edits of a page overlap at ${edit.from}`)
    parts.push(text.slice(end, edit.from), edit.text)
    end = edit.to
  }
  return [...parts, text.slice(end)].join('')
}

/** An attribute as a page’s text has it, escaped as Astro escapes it. */
export const attributeText = (name: string, value: string): string =>
  `${name}="${value.replaceAll('&', '&amp;').replaceAll('"', '&quot;')}"`
