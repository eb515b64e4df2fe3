import { dimensions } from '../../mechanism/dimensions.ts'
import { listed } from '../lists.ts'
import { type NumberedPart, numberedParts } from '../numbered-parts.ts'

/** The views of the machine in three dimensions that have a name. */
export const sceneViewNames = [
  'front',
  'behind',
  'below',
  'bed',
  'across',
  'carriage',
  'together',
  'tips',
  'along',
  'apart',
  'whole',
] as const
export type SceneViewName = (typeof sceneViewNames)[number]

/** The views that chapters alone have: all of the machine close together, and squarely where something is measured. */
const chapterViews: ReadonlySet<SceneViewName> = new Set(['together', 'tips', 'along'])

/** The views that the page of the parts has. */
export const partsViewNames = sceneViewNames.filter((name) => !chapterViews.has(name))

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
    title: 'The tips of the feeler pins and the sweep, squarely from the front',
    shown: 'Cut off at both sides and below the top plate.',
  },
  along: {
    name: 'Along',
    title: 'Along the bed under the carriage, squarely from behind',
    shown: 'Cut open behind the needles: right is on your left. Hatched: cut.',
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

/** A side in words, for a view turned so many degrees to the right of the front, -179 to 180. */
const sideOf = (turned: number): string => {
  const [away, side] = [Math.abs(turned), turned < 0 ? 'left' : 'right']
  if (away <= 10) return 'the front'
  if (away >= 170) return 'behind'
  if (away <= 70) return `the front, turned to the ${side}`
  return away >= 110 ? `behind, turned to the ${side}` : `the ${side} end`
}

/** Where one stands, in words. */
export const standpoint = ({
  turned,
  raised,
}: {
  readonly turned: number
  readonly raised: number
}): string => {
  const height =
    raised > 60 ? 'from above' : raised > 8 ? 'from a little above' : raised >= -8 ? 'level' : 'from below'
  return `Seen from ${sideOf(turned)}, ${height}.`
}

/** The picture in words: the view, where one stands, and the parts that one sees, each with its number. */
export const describeScene = (
  name: SceneViewName,
  view: { readonly turned: number; readonly raised: number },
  seen: readonly NumberedPart[],
): string => {
  const { title, shown } = sceneWords[name]
  const parts = seen
    .toSorted((one, other) => numberedParts[one].number - numberedParts[other].number)
    .map((part) => `${numberedParts[part].number} ${numberedParts[part].name}`)
  return `${title}. ${standpoint(view)} ${shown} One sees ${listed(parts)}.`
}
