/** Where one sentence ends and the next begins: after its mark, and a quotation's end, at a space. */
const seam = /(?<=[.?!:][”’)]*)\s+/u

/**
 * Puts each sentence of a paragraph into a span of its own, so that it can be shown by itself. What stands within a
 * sentence stays as it is. Gives the spans, the same ones each time; the paragraph's own words don't change.
 */
export const sentencesOf = (paragraph: HTMLElement): HTMLElement[] => {
  if (paragraph.dataset.sentences !== undefined) return [...paragraph.children] as HTMLElement[]
  const make = (): HTMLElement => paragraph.ownerDocument.createElement('span')
  const sentences = [make()]
  for (const node of [...paragraph.childNodes]) {
    if (node.nodeType !== 3) {
      sentences.at(-1)?.append(node)
      continue
    }
    for (const [n, words] of (node.textContent ?? '').split(seam).entries()) {
      if (n > 0) {
        sentences.at(-1)?.append(' ')
        sentences.push(make())
      }
      sentences.at(-1)?.append(words)
    }
  }
  const full = sentences.filter(({ textContent }) => textContent.trim() !== '')
  paragraph.replaceChildren(...full)
  paragraph.dataset.sentences = String(full.length)
  return full
}
