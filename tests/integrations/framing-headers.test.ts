import { expect, test } from 'vitest'
import { framingHeaders } from '@/integrations/framing-headers.ts'

const names = ['404.html', '_astro', 'chapters', 'embed', 'index.html', 'sw.js', 'workbench']

/** The headers that a host sends for an address: those of every rule that fits it. */
const sent = (text: string, address: string): string[] => {
  const rules = text.split(/\n(?=\/)/).map((rule) => {
    const [path = '', ...headers] = rule.trim().split(/\n\s*/)
    return { path, headers }
  })
  return rules.flatMap(({ path, headers }) => {
    const fits = path.endsWith('*') ? address.startsWith(path.slice(0, -1)) : address === path
    return fits ? headers : []
  })
}

test('no page but an embedded figure may be framed by another site', () => {
  const text = framingHeaders(names, '/')
  for (const address of ['/', '/index.html', '/404.html', '/workbench/', '/chapters/the-hold/'])
    expect(sent(text, address)).toEqual([
      "Content-Security-Policy: frame-ancestors 'self'",
      'X-Frame-Options: SAMEORIGIN',
    ])
})

test('an embedded figure may be framed by anybody, and no rule against it fits its address', () => {
  expect(sent(framingHeaders(names, '/'), '/embed/chain/')).toEqual([
    'Content-Security-Policy: frame-ancestors *',
  ])
})

test('under a path, every rule is for that path', () => {
  const text = framingHeaders(names, '/machines/')
  expect(sent(text, '/machines/')).toHaveLength(2)
  expect(sent(text, '/machines/embed/hold/')).toHaveLength(1)
  expect(sent(text, '/other/')).toEqual([])
})
