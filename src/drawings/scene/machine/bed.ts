import { box, type BoxLook } from '../engine/piece.ts'
import { stretchNeedles } from './needles.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { bed as place, bedLevels, needleAt, stripEnds, trickHalf } from './places.ts'

const joint = { kind: 'joint' } as const

/** The walls between the tricks, on the bed's floor: as one solid, with the tricks cut into it. */
const walls = (): MachinePiece[] => {
  const edges = [
    stripEnds.left,
    ...stretchNeedles.flatMap((needle) => [needleAt(needle) - trickHalf, needleAt(needle) + trickHalf]),
    stripEnds.right,
  ]
  const { floor, top } = bedLevels
  return Array.from({ length: edges.length / 2 }, (_, n) => {
    const needle = stretchNeedles[n]
    const make = pieceMaker('bed', 'bed', 'frame', { order: needle === undefined ? null : n + 1 })
    const isLast = n === edges.length / 2 - 1
    const look: BoxLook = {
      bottom: joint,
      ...(isLast ? { right: { kind: 'cut' } } : {}),
      ...(n === 0 ? { left: { kind: 'cut' } } : {}),
    }
    return make(box([edges[2 * n]!, place.front, floor], [edges[2 * n + 1]!, place.tricks, top], look))
  })
}

/** The bed of the stretch: cut off at either end, with a channel behind the butts in which the strips lie. */
export const bed = (): MachinePiece[] => {
  const make = pieceMaker('bed', 'bed', 'frame')
  const deck = pieceMaker('deck', 'deck', 'frame')
  const { floor, under, channel } = bedLevels
  const ends: BoxLook = { left: { kind: 'cut' }, right: { kind: 'cut' } }
  const [left, right] = [stripEnds.left, stripEnds.right]
  return [
    ...walls(),
    make(
      box([left, place.front, under], [right, place.tricks, floor], {
        ...ends,
        top: { kind: 'flush' },
        back: joint,
      }),
    ),
    make(box([left, place.tricks, under], [right, place.back, channel - 0.5], { ...ends, front: joint })),
    make(box([stripEnds.wall, place.channel, channel - 0.5], [stripEnds.wall + 3, place.back - 1.5, -79])),
    make(
      box([right, place.tricks, under], [stripEnds.wall + 3, place.back, channel - 0.5], {
        left: joint,
        right: { kind: 'cut' },
      }),
    ),
    make(
      box([left, place.back - 1.5, channel - 0.5], [stripEnds.wall + 3, place.back, -75], {
        ...ends,
        bottom: joint,
      }),
    ),
    deck(box([left, place.deck, -71.6], [right, place.deckBack, -70.05], { ...ends })),
  ]
}
