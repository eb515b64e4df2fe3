import { shiftTo } from '../../link/reader-place.ts'
import { type CardPlace, needleName } from '../../mechanism/bed.ts'
import type { Machine } from '../machine/index.ts'

/** The address of a page of the site, with where column 1 is on the reader's own machine where that is not R1. */
const withPlace = (address: string, place: CardPlace): string =>
  shiftTo(place) === 0 ? address : `${address}#first=${needleName(place.columnOne)}`

/** The ways to the other chapters and to the class view keep where column 1 is on the reader's own machine. */
export const keepPlaceInLinks = (root: HTMLElement, { ownPlace }: Machine): void => {
  const links = root.querySelectorAll<HTMLAnchorElement>('.chapter-ends a, .chapter-place a')
  const addresses = Array.from(links, ({ href }) => href)
  const write = (place: CardPlace): void => {
    for (const [n, link] of links.entries()) link.href = withPlace(addresses[n] ?? '', place)
  }
  ownPlace.listen(write)
  write(ownPlace.now())
}
