import type { CardLibrary } from '@/link/state.ts'

/** A library apart from the site's own cards, so that these tests stand when a design changes. */
export const library: CardLibrary = {
  main: 'main',
  cards: new Map([
    ['main', [0x28a02a, 0xffffff, 0, 0x123456]],
    ['two-rows', [0xf0f0f0, 0x0f0f0f]],
  ]),
}
