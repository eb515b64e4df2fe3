import { modulo } from '../../../mechanism/bed.ts'
import { dimensions } from '../../../mechanism/dimensions.ts'
import { allColumns } from '../../../mechanism/indices.ts'
import { along, box, type Mark, prism, wire } from '../engine/piece.ts'
import { halfOfMark } from '../engine/cut.ts'
import type { Vector } from '../engine/vector.ts'
import { roundHole } from './frame.ts'
import { type MachinePiece, pieceMaker } from './part.ts'
import { cheekAt, cheekThick, cheekTop, columnAt, levels, readAt } from './places.ts'
import { cardLies, holeAt, moodOf, type Pose } from './pose.ts'

/** How far apart the rows of the card are. */
export const rowPitch = 5
const halfCard = 58
const edgeHoles = { at: 55.5, radius: 1.1 } as const

/** How steeply the card rises at each row: flat over the pins and over the drum, then up its rest. In degrees. */
const rises = [
  { later: -1, slope: 0 },
  { later: 0, slope: 0 },
  { later: 1, slope: 0 },
  { later: 2, slope: 18 },
  { later: 3, slope: 36 },
  { later: 4, slope: 50 },
  { later: 5, slope: 50 },
  { later: 6, slope: 50 },
  { later: 7, slope: 50 },
] as const

/** The rows of the card that are drawn, by how much later each is read. */
export const cardRows: readonly number[] = rises.map(({ later }) => later)

interface Facet {
  readonly later: number
  readonly from: readonly [back: number, up: number]
  readonly to: readonly [back: number, up: number]
  /** Up from the card's lower side. */
  readonly normal: readonly [back: number, up: number]
}

/** The card's flat stretches, one for each row. */
const facets: readonly Facet[] = (() => {
  let from: readonly [number, number] = [readAt - 1.5 * rowPitch, levels.card[0]]
  return rises.map(({ later, slope }) => {
    const angle = (slope * Math.PI) / 180
    const to = [from[0] + rowPitch * Math.cos(angle), from[1] + rowPitch * Math.sin(angle)] as const
    const facet = { later, from, to, normal: [-Math.sin(angle), Math.cos(angle)] as const }
    from = to
    return facet
  })
})()

/** The rows that lie flat over the pins; the others rise behind them. */
const flatTo = 1

/** A mark on the card laid flat: to the right, and on along the card from its front end, of which a facet shows its part. */
const onFacet = (mark: Mark, n: number): Mark | null => {
  const kept = halfOfMark(mark, { axis: 1, at: n * rowPitch }, -1)
  return kept && halfOfMark(kept, { axis: 1, at: (n + 1) * rowPitch }, 1)
}

/** The rows of which something may be on a facet while the card has still so many rows to go on. */
const rowsOn = (later: number, roll: number): number[] =>
  roll === 0 ? [later] : [0, 1].map((by) => Math.floor(later - roll) + by)

/**
 * The card, a piece for each row; none without a card. One that lies to the side or askew is drawn so, and of one that goes
 * on its holes go along it.
 */
export const card = (pose: Pose): MachinePiece[] => {
  const { aside, askew } = cardLies(pose)
  const thick = levels.card[1] - levels.card[0]
  const isThere = pose.frame.pass.row !== null
  const roll = pose.frame.cardRoll ?? 0
  return facets.map(({ later, from, to, normal }, n) => {
    const make = pieceMaker('card', later <= flatTo ? 'card' : 'feed', 'card', {
      part: 'card',
      mood: moodOf(pose, 'card', false),
    })
    if (!isThere) return make(null)
    const along2 = [(to[0] - from[0]) / rowPitch, (to[1] - from[1]) / rowPitch] as const
    // It is askew in its own plane.
    const placed = ([x, y, z]: Vector): Vector => {
      const on = (askew * x) / dimensions.pitch
      return [x + aside, y + on * along2[0], z + on * along2[1]]
    }
    const holesAt = (lift: number): Mark[] => {
      const hole = (row: number, x: number, radius: number, look: Mark['look'] = 'hole'): Mark[] => {
        const middle = (row + roll - cardRows[0]! + 0.5) * rowPitch
        const mark = onFacet({ look, points: roundHole([x, middle, 0], radius) }, n)
        if (!mark) return []
        const points = mark.points.map(([right, on]) =>
          placed([
            right,
            from[0] + (on - n * rowPitch) * along2[0] + normal[0] * lift,
            from[1] + (on - n * rowPitch) * along2[1] + normal[1] * lift,
          ]),
        )
        return [{ ...mark, points }]
      }
      return rowsOn(later, roll).flatMap((row) => [
        ...allColumns.flatMap((column) => {
          const here = holeAt(pose, row, column)
          return here === null ? [] : hole(row, columnAt(column), pose.condition.dimensions.hole / 2, here)
        }),
        ...hole(row, -edgeHoles.at, edgeHoles.radius),
        ...hole(row, edgeHoles.at, edgeHoles.radius),
      ])
    }
    const outline = (x: number): Vector[] =>
      [
        [from[0], from[1]],
        [to[0], to[1]],
        [to[0] + normal[0] * thick, to[1] + normal[1] * thick],
        [from[0] + normal[0] * thick, from[1] + normal[1] * thick],
      ].map(([back, up]) => placed([x, back!, up!]))
    const [left, right] = [outline(-halfCard), outline(halfCard)]
    // Where what is behind it can be taken off, the card's edge is seen.
    const backEdge = {
      kind: 'flush',
      marks: [1, 2].map((corner): Mark => ({ look: 'line', points: [left[corner]!, right[corner]!] })),
    } as const
    return make(
      prism(left, right, {
        sides: {
          0: { marks: holesAt(0) },
          1: n === facets.length - 1 ? {} : later === flatTo ? backEdge : { kind: 'joint' },
          2: { marks: holesAt(thick) },
          3: n === 0 ? {} : { kind: 'joint' },
        },
      }),
    )
  })
}

/** What keeps the card in its place: a ledge before the pins, a lip over either edge, and the rest behind. */
const guides = (): MachinePiece[] => {
  const flat = pieceMaker('card-guide', 'card', 'frame')
  const rest = pieceMaker('card-guide', 'feed', 'frame')
  const last = facets.at(-1)!
  const first = facets[rises.findIndex(({ slope }) => slope === 50)]!
  const under = (point: readonly [number, number], depth: number): readonly [number, number] => [
    point[0] - last.normal[0] * depth,
    point[1] - last.normal[1] * depth,
  ]
  const lip = (side: -1 | 1): MachinePiece[] => {
    const [a, b] = [side * cheekAt, side * (halfCard - 1)]
    const [left, right] = [Math.min(a, b), Math.max(a, b)]
    const wall = [side * cheekAt, side * (halfCard + 1.4)]
    return [
      flat(box([left, 26, levels.card[1] + 0.2], [right, 37, levels.card[1] + 1.2])),
      flat(
        box([Math.min(...wall), 26, 0], [Math.max(...wall), 35.8, levels.card[1] + 0.2], {
          top: { kind: 'joint' },
        }),
      ),
    ]
  }
  const lowest = under(first.from, 0.45)
  const share = (cheekTop - lowest[1]) / (last.to[1] - first.from[1])
  const onCheek = [lowest[0] + (last.to[0] - first.from[0]) * share, cheekTop] as const
  const brace = (side: -1 | 1): MachinePiece => {
    const [inner, outer] = [side * cheekAt, side * (cheekAt + cheekThick)]
    return rest(
      along(
        [onCheek, [Math.max(53, onCheek[0]), cheekTop], under(last.to, 2), under(last.to, 0.45)],
        Math.min(inner, outer),
        Math.max(inner, outer),
      ),
    )
  }
  return [
    flat(box([-cheekAt, 25.7, 0], [cheekAt, 29, levels.card[0]], { right: { kind: 'cut' } })),
    ...lip(-1),
    ...lip(1),
    rest(
      along(
        [under(first.from, 1.3), under(last.to, 1.3), under(last.to, 0.45), under(first.from, 0.45)],
        -cheekAt,
        cheekAt,
      ),
    ),
    brace(-1),
    brace(1),
  ]
}

const drum = { back: 42.2, up: -3.7, radius: 6.5, sides: 20 } as const

const disc = (radius: number, sides: number, turned = 0): (readonly [number, number])[] =>
  Array.from({ length: sides }, (_, n) => {
    const angle = ((n + turned) / sides) * 2 * Math.PI
    return [drum.back + radius * Math.cos(angle), drum.up + radius * Math.sin(angle)] as const
  })

const teeth = 8

/** How far the drum has still to turn, in radians: a row of the card takes it on by a tooth of its ratchet. */
const behindBy = ({ frame }: Pose): number => ((frame.cardRoll ?? 0) / teeth) * 2 * Math.PI

/** Ribs along the drum, by which one sees it turn: on each of its sides those that are there now. */
const ribsOn = (pose: Pose): Record<number, { marks: Mark[] }> => {
  const step = (2 * Math.PI) / drum.sides
  const corners = disc(drum.radius, drum.sides)
  const ribs: Record<number, { marks: Mark[] }> = {}
  for (let n = 0; n < teeth; n++) {
    const angle = modulo(((n + 0.5) / teeth) * 2 * Math.PI - behindBy(pose), 2 * Math.PI)
    const side = Math.floor(angle / step)
    const [one, other] = [corners[side]!, corners[(side + 1) % drum.sides]!]
    const share = angle / step - side
    const [back, up] = [one[0] + (other[0] - one[0]) * share, one[1] + (other[1] - one[1]) * share]
    ribs[side] = {
      marks: [
        {
          look: 'line',
          points: [
            [-halfCard, back, up],
            [halfCard, back, up],
          ],
        },
      ],
    }
  }
  return ribs
}

/** Where along the card a peg is: in rows after the one that is read, and up from the card. */
const onCard = (row: number, up: number): readonly [back: number, up: number] => {
  const { from, to, normal } = facets[Math.floor(row - cardRows[0]! + 0.5)]!
  const share = row - cardRows[0]! + 0.5 - Math.floor(row - cardRows[0]! + 0.5)
  return [
    from[0] + (to[0] - from[0]) * share + normal[0] * up,
    from[1] + (to[1] - from[1]) * share + normal[1] * up,
  ]
}

/** How far a peg comes out of the card, and half its thickness: a pointed one that sinks is thinner. */
const [pegHeight, pegRadius] = [0.9, 0.6]
/** The pawls: where each turns, and the tooth that it is behind. */
const pawls = [
  { part: 'pawl.right', pivot: [27, 3.6], tip: [35.1, -1.2] },
  { part: 'pawl.left', pivot: [50, -14], tip: [44.6, -11] },
] as const

/** The drum with the pegs that take the card along, its ratchet, and the pawls that turn it. */
const drumPieces = (pose: Pose): MachinePiece[] => {
  const make = pieceMaker('drum', 'feed', 'frame')
  const metal = pieceMaker('drum', 'feed', 'metal')
  const right = cheekAt + cheekThick
  const [thick, behind] = [levels.card[1] - levels.card[0], behindBy(pose)]
  // As the card goes on, one peg comes up in a hole behind the first, and the first one sinks.
  const behindPeg = modulo(pose.frame.cardRoll ?? 0, 1)
  const peg = (side: -1 | 1, row: number, share: number): MachinePiece => {
    const [high, radius] = [pegHeight * share, Math.min(pegRadius, pegHeight * share)]
    // Where the card is bent, a peg on its way is clear of it.
    const low = share < 1 ? radius * 0.4 : 0
    return metal(
      share < 0.05
        ? null
        : wire(
            [side * edgeHoles.at, ...onCard(row, thick + low)],
            [side * edgeHoles.at, ...onCard(row, thick + low + high)],
            radius,
            [true, false],
          ),
    )
  }
  return [
    make(along(disc(drum.radius, drum.sides), -halfCard, halfCard, { sides: ribsOn(pose) })),
    ...([-1, 1] as const).flatMap((side) => [
      peg(side, 1 + behindPeg, 1 - behindPeg),
      peg(side, behindPeg, behindPeg),
    ]),
    metal(wire([halfCard, drum.back, drum.up], [cheekAt, drum.back, drum.up], 1.3, [true, true])),
    metal(wire([right, drum.back, drum.up], [right + 4, drum.back, drum.up], 1.3, [true, false])),
    metal(wire([-cheekAt, drum.back, drum.up], [-halfCard, drum.back, drum.up], 1.3, [true, true])),
    metal(along(disc(5, 16), right + 0.8, right + 2.8)),
    ...Array.from({ length: teeth }, (_, n) => {
      const [a, b, c] = [n, n + 0.1, n + 0.92].map((turn) => (turn / teeth) * 2 * Math.PI) as [
        number,
        number,
        number,
      ]
      const at = (radius: number, angle: number): readonly [number, number] => [
        drum.back + radius * Math.cos(angle - behind),
        drum.up + radius * Math.sin(angle - behind),
      ]
      return metal(along([at(4.7, a), at(7, b), at(4.7, c)], right + 0.8, right + 2.8))
    }),
    ...pawls.flatMap(({ part, pivot, tip }) => {
      // A fault of both has no side.
      const mood = moodOf(pose, pose.broken.has('pawl') ? 'pawl' : part, false)
      const pawl = pieceMaker('pawl', 'feed', 'metal', { part, mood })
      const length = Math.hypot(tip[0] - pivot[0], tip[1] - pivot[1])
      const [back, up] = [(tip[0] - pivot[0]) / length, (tip[1] - pivot[1]) / length]
      const at = (on: number, aside: number): readonly [number, number] => [
        pivot[0] + back * on - up * aside,
        pivot[1] + up * on + back * aside,
      ]
      return [
        pawl(
          along(
            [at(-1.6, -1.3), at(length, -0.3), at(length, 0.45), at(-1.6, 1.3)],
            right + 1.1,
            right + 2.5,
          ),
        ),
        pawl(wire([right, ...pivot], [right + 4, ...pivot], 0.8, [true, false])),
      ]
    }),
  ]
}

/** What holds the card, and what steps it. */
export const feed = (pose: Pose): MachinePiece[] => [...guides(), ...drumPieces(pose)]
