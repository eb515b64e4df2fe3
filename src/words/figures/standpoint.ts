import { listed } from '../lists.ts'
import { type NumberedPart, numberedParts } from '../numbered-parts.ts'
import { type SceneViewName, sceneWords } from './scene.ts'

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
