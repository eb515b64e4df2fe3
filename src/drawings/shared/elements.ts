const svgSpace = 'http://www.w3.org/2000/svg'

type Attributes = Readonly<Record<string, string>>

/** Makes elements of one document: the browser's, or the one in which a page is built. Words go in as text only. */
export interface Paper {
  readonly html: (tag: string, attributes?: Attributes, children?: readonly (Node | string)[]) => HTMLElement
  readonly svg: (tag: string, attributes?: Attributes, children?: readonly Node[]) => SVGElement
}

export const paperOf = (document: Document): Paper => {
  const fill = <E extends Element>(
    made: E,
    attributes: Attributes,
    children: readonly (Node | string)[],
  ): E => {
    for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value)
    made.append(...children)
    return made
  }
  return {
    html: (tag, attributes = {}, children = []) => fill(document.createElement(tag), attributes, children),
    svg: (tag, attributes = {}, children = []) =>
      fill(document.createElementNS(svgSpace, tag), attributes, children),
  }
}
