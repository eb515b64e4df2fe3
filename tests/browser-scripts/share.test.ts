import { afterEach, describe, expect, test, vi } from 'vitest'
import { shareable } from '@/browser/share.ts'

const page = 'file:///media/stick/site/case/index.html'

/** A page of a site that was opened from files, built for an address or for none. */
const opened = (dataset: Readonly<Record<string, string>>): void => {
  vi.stubGlobal('document', { documentElement: { dataset } })
  vi.stubGlobal('location', { href: page })
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
    opened({ packRoot: '../', packSite: 'https://example.org/sub/' })
    expect(shareable(link)).toBe(shared)
  })

  test('stays a file’s where the site was built for no address', () => {
    opened({ packRoot: '../' })
    expect(shareable(page)).toBe(page)
  })

  test('is left alone on a server', () => {
    opened({})
    expect(shareable('https://example.org/case/#at=R8')).toBe('https://example.org/case/#at=R8')
  })
})
