/** The element that a page must have here. Throws where it lacks it: the page is ours. */
export const required = <E extends Element>(root: ParentNode, selector: string, kind: new () => E): E => {
  const found = root.querySelector(selector)
  if (!(found instanceof kind)) throw new Error(`the page lacks ${selector}`)
  return found
}

/** Makes an element. Words go in as text only. */
export const element = <Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string>> = {},
  children: readonly (Node | string)[] = [],
): HTMLElementTagNameMap[Tag] => {
  const made = document.createElement(tag)
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value)
  made.append(...children)
  return made
}

/** Sets an element's words where they differ: unchanged ones cost nothing, and others as little as may be. */
export const setText = (place: Element, words: string): void => {
  const { firstChild } = place
  if (!(firstChild instanceof Text) || place.childNodes.length > 1) place.textContent = words
  else if (firstChild.data !== words) firstChild.data = words
}

/** An element's `data-` attribute by its camel-case name. Throws where the element lacks it: the page is ours. */
export const dataOf = ({ dataset, className }: HTMLElement, name: string): string => {
  const value = dataset[name]
  if (value === undefined) throw new Error(`the page’s .${className} lacks its data ${name}`)
  return value
}
