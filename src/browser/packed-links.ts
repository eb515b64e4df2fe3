import { packedAddress } from '../link/packed-address.ts'

const { packBase = '/', packRoot = './' } = document.documentElement.dataset
const links = 'a[href], img[src]'

/** Leads a link that a script made to the file it means. */
const mend = (link: Element): void => {
  const name = link.localName === 'img' ? 'src' : 'href'
  const address = link.getAttribute(name) ?? ''
  const packed = packedAddress(address, packBase, packRoot)
  if (packed !== address) link.setAttribute(name, packed)
}

const observer = new MutationObserver((changes) => {
  for (const { target, addedNodes } of changes) {
    if (target instanceof Element && target.matches(links)) mend(target)
    for (const node of addedNodes) {
      if (!(node instanceof Element)) continue
      if (node.matches(links)) mend(node)
      for (const link of node.querySelectorAll(links)) mend(link)
    }
  }
})
observer.observe(document.documentElement, {
  subtree: true,
  childList: true,
  attributes: true,
  attributeFilter: ['href', 'src'],
})
