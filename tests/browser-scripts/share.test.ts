import { afterEach, describe, expect, test, vi } from 'vitest'
import { onlyHere, shareable } from '@/browser/share.ts'

const page = 'file:///media/stick/site/case/index.html'

/** A page of a site, at an address, with what its build and its archive say of it. */
const opened = (href: string, dataset: Readonly<Record<string, string>>): void => {
  vi.stubGlobal('document', { documentElement: { dataset } })
  vi.stubGlobal('location', { href, origin: new URL(href).origin })
}

afterEach(() => {
  vi.unstubAllGlobals()
})

describe('a link from a site opened from files', () => {
  test.each([
    [`${page}?make#break=strip.3.seized`, 'https://example.org/sub/case/?make#break=strip.3.seized'],
    ['file:///media/stick/site/index.html#at=R8', 'https://example.org/sub/#at=R8'],
    ['file:///media/stick/site/stills/a.svg', 'https://example.org/sub/stills/a.svg'],
    ['file:///elsewhere/index.html', 'file:///elsewhere/index.html'],
  ])('%s leads to the site’s address', (link, shared) => {
    opened(page, { packRoot: '../', packSite: 'https://example.org/sub/' })
    expect(shareable(link)).toBe(shared)
  })

  test('stays a file’s where the site was built for no address, and that is said', () => {
    opened(page, { packRoot: '../' })
    expect(shareable(page)).toBe(page)
    expect(onlyHere(page)).toBe('It works on this device only, from where the site’s files lie.')
  })
})

describe('a link from a site on a server', () => {
  test.each([
    'https://example.org/case/#at=R8',
    'http://192.168.1.5:4321/case/#at=R8',
    'http://localhost.example/case/',
    'http://127.example/case/',
  ])('%s is left alone, with nothing to say', (link) => {
    opened(link, { networkSite: 'http://192.168.1.5:4321/' })
    expect(shareable(link)).toBe(link)
    expect(onlyHere(link)).toBeNull()
  })

  test.each(['http://localhost:4321/sub/', 'http://127.0.0.1:4321/sub/', 'http://[::1]:4321/sub/'])(
    'opened on the device itself, at %s, leads to the network that the site is served to',
    (site) => {
      opened(`${site}case/`, { networkSite: 'http://192.168.1.5:4321/sub/' })
      const shared = shareable(`${site}case/?make#at=R8`)
      expect(shared).toBe('http://192.168.1.5:4321/sub/case/?make#at=R8')
      expect(onlyHere(shared)).toBeNull()
    },
  )

  test.each([
    'http://localhost:4321/',
    'http://a.localhost/',
    'http://127.0.0.1:4321/',
    'http://[::1]:4321/',
  ])('that is served to nobody else, at %s, says so', (site) => {
    opened(site, {})
    expect(shareable(`${site}case/`)).toBe(`${site}case/`)
    expect(onlyHere(`${site}case/`)).toBe('It works on this device only, while the site is served here.')
  })
})
