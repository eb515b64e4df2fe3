import { dimensions } from '../../mechanism/dimensions.ts'

/** The views of the machine in three dimensions that the page of the parts has. */
export const partsViewNames = [
  'front',
  'behind',
  'below',
  'bed',
  'across',
  'carriage',
  'apart',
  'whole',
] as const

/** All views that have a name: some are shown in chapters alone. */
export const sceneViewNames = [...partsViewNames, 'together', 'tips', 'row', 'along'] as const
export type SceneViewName = (typeof sceneViewNames)[number]

/** What a view is called, and what is taken off or cut in it. */
export const sceneWords: Readonly<
  Record<SceneViewName, { readonly name: string; readonly title: string; readonly shown: string }>
> = {
  front: {
    name: 'Front',
    title: 'The card reader from the front',
    shown: 'The front cover and the right cheek are off.',
  },
  behind: {
    name: 'Behind',
    title: 'The card reader from behind',
    shown:
      'The right cheek is off, and the card is cut behind its row, with the drum that carries it taken out.',
  },
  below: {
    name: 'Below',
    title: 'The card reader turned over',
    shown:
      'As you see it with the reader in your hand. The right cheek is off, and the card cut behind its row.',
  },
  bed: {
    name: 'Bed',
    title: 'Strips and catches in the bed',
    shown: `A stretch of the bed of ${dimensions.columns} needles with the reader, the carriage and the deck off, and the retainer bar half drawn out.`,
  },
  across: {
    name: 'Across',
    title: 'Across the bed at one needle',
    shown: 'Cut beside one needle and seen from the right end; the front is on the left. Hatched: cut.',
  },
  carriage: {
    name: 'Carriage',
    title: 'The carriage turned over',
    shown: 'From underneath, with the butts of some needles where they meet the cams.',
  },
  together: {
    name: 'Together',
    title: 'All of it in its place',
    shown: `The stretch of the bed under the reader, with the right cheek off. The bed goes on to both sides.`,
  },
  tips: {
    name: 'Tips',
    title: 'Pins and sweep squarely from the front',
    shown: 'Cut off at both sides.',
  },
  row: {
    name: 'Row',
    title: 'The row that is read, cut along its holes',
    shown: 'Seen from the front; what is before the cut is taken away. Hatched: cut.',
  },
  along: {
    name: 'Along',
    title: 'Along the bed squarely from behind',
    shown: 'Cut behind the needles: right is on your left. Hatched: cut.',
  },
  apart: {
    name: 'Apart',
    title: 'Taken apart in the order of the push',
    shown:
      'From the card at the top down to the needles; thin lines join what pushes what. What carries the parts is left out.',
  },
  whole: {
    name: 'Whole',
    title: 'The whole machine',
    shown: `From one turn mark to the other, in true proportion. The belt’s cover is off its left half, and the deck is cut away beside the reader; the small springs are left out.`,
  },
}

/** How many times larger heights of the reader and of the bed are drawn, in words. */
export const heightsSentence = (reader: number, bed: number): string =>
  `Heights of pins are drawn ${reader} times as large, those of butts, catches and cams ${bed} times; sideways movements as they are. Every millimetre is illustrative: measure your own machine.`
