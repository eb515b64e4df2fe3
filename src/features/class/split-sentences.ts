/** Where one sentence ends and the next begins: after its mark, and a quotation's end, at a space. */
const sentenceEnd = /(?<=[.?!:][”’)]*)\s+/u

/**
 * Puts each sentence of a paragraph into a span of its own, so that it can be shown by itself. Elements within a
 * sentence stay as they are. Returns the spans, the same ones each time; the paragraph's text does not change.
 */
export const splitSentences = (paragraph: HTMLElement): HTMLElement[] => {
  if (paragraph.dataset['sentences'] !== undefined) return [...paragraph.children] as HTMLElement[]
  const make = (): HTMLElement => paragraph.ownerDocument.createElement('span')
  let current = make()
  const sentences = [current]
  for (const node of [...paragraph.childNodes]) {
    if (!(node instanceof Text)) {
      current.append(node)
      continue
    }
    for (const [n, words] of node.data.split(sentenceEnd).entries()) {
      if (n > 0) {
        current.append(' ')
        current = make()
        sentences.push(current)
      }
      current.append(words)
    }
  }
  const full = sentences.filter(({ textContent }) => textContent.trim() !== '')
  paragraph.replaceChildren(...full)
  paragraph.dataset['sentences'] = String(full.length)
  return full
}
