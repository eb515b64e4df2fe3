import { readFileSync } from 'node:fs'
import { root } from 'astro:config/server'
import { parseHTML } from 'linkedom'
import { svgAddress } from './svg-address.ts'

/** What an installed site's icon may be: with its motif as large as it can be, or small enough for a round mask. */
export const iconKinds = ['plain', 'mask'] as const
export type IconKind = (typeof iconKinds)[number]

/** How large the icons are, in pixels; the smallest is for the home screens that want that size. */
export const iconSizes = [180, 192, 512] as const

/** The motif's own square, in its units, and what a round mask leaves of it: a circle of 80 % (W3C, maskable icons). */
const motif = 32
const grounds: Readonly<Record<IconKind, number>> = { plain: motif, mask: motif / 0.8 }

/** The site's icon as SVG, filling its square: the two needles of `public/icon.svg`, one of them missed. */
export const iconPicture = (source: string, kind: IconKind, size: number): string => {
  const { document } = parseHTML(source)
  const svg = document.querySelector('svg')
  const ground = svg?.querySelector('rect')
  if (!svg || !ground) throw new Error('the icon lacks its ground')
  const side = grounds[kind]
  const start = (motif - side) / 2
  svg.setAttribute('viewBox', `${start} ${start} ${side} ${side}`)
  svg.setAttribute('width', String(size))
  svg.setAttribute('height', String(size))
  for (const name of ['x', 'y']) ground.setAttribute(name, String(start))
  for (const name of ['width', 'height']) ground.setAttribute(name, String(side))
  ground.removeAttribute('rx')
  return svg.outerHTML
}

/** The site's icon. */
export const iconSource = readFileSync(new URL('public/icon.svg', root), 'utf8').trim()

/** The icon's address for a page that has it in itself: to fetch it would hold up what is read. */
export const iconAddress = svgAddress(iconSource.replaceAll('"', "'"))
