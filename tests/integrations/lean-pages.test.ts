import { expect, test } from 'vitest'
import { edited, elementsOf } from '@/integrations/html-edits.ts'
import { ownPolicy, sourceOf } from '@/integrations/own-policy.ts'

test('a page’s policy names the texts that the page has, and no others', () => {
  const [style, script, other] = ['.a{order:1}', 'go()', 'goElsewhere()']
  const data = '{"a":1}'
  const policy = (...texts: string[]): string =>
    `default-src 'none'; script-src 'self' ${texts.map(sourceOf).join(' ')}; style-src-attr 'unsafe-inline'`
  const htmlWith = (content: string): string =>
    `<meta http-equiv="content-security-policy" content="${content}"><style>${style}</style><script>${script}</script><script type="deferred" src="/a.js"></script><script type="application/json">${data}</script>`
  const html = htmlWith(policy(other, style, script))
  expect(edited(html, ownPolicy(html, elementsOf(html)))).toBe(htmlWith(policy(style, script)))
})
