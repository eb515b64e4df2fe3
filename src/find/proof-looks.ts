import { wayOfPass } from '../mechanism/bed.ts'
import { type Card, everyHole } from '../mechanism/card.ts'
import { dimensions } from '../mechanism/dimensions.ts'
import { speeds } from './battery.ts'
import type { RequestedPass } from './check-outcomes.ts'
import type { MachinePlace, View } from './view.ts'

/** A pass that may be made to prove a machine, and what the model makes of it. */
export interface ProofLook {
  readonly pass: RequestedPass
  readonly view: View
}

/** The longest run of the card at hand: nobody knits more rows than this to prove a machine. */
const longestRun = 36

/** How often a full row may be made the same way: what goes by chance may need it more than once. */
const repeats = 2

/**
 * The run of the card at hand from its first row on. A card with an odd number of rows is read both ways in two rounds;
 * of one with an even number a second round shows what the first did. Its first pass is never a fast one.
 */
const runLooks = (card: Card, place: MachinePlace): ProofLook[] => {
  const rounds = card.length % 2 === 1 ? 2 : 1
  const count = Math.min(longestRun, rounds * card.length)
  return [speeds.ordinary, speeds.fast].flatMap((speed) =>
    Array.from({ length: count }, (_, n): ProofLook => ({
      pass: { card: 'same', row: (n % card.length) + 1, way: wayOfPass(n + 1), speed, pass: n + 1 },
      view: { card, pass: n + 1, speed, shift: 0, ...place },
    })).filter(({ view }) => view.pass > 1 || speed === speeds.ordinary),
  )
}

const plainLook = (
  card: 'all-holes' | 'blank',
  pass: 1 | 2,
  speed: number,
  place: MachinePlace,
): ProofLook => ({
  pass: { card, row: 1, way: wayOfPass(pass), speed },
  view: { card: [card === 'blank' ? 0 : everyHole], pass, speed, shift: null, ...place },
})

/**
 * Every pass that may be asked for to prove a machine, the plainest first: rows of the card at hand, and full and blank
 * rows either way, at the ordinary and at a fast speed.
 */
export const proofLooks = (card: Card | null, place: MachinePlace): ProofLook[] => [
  ...(card ? runLooks(card, place) : []),
  ...[speeds.ordinary, speeds.fast].flatMap((speed) =>
    ([1, 2] as const).flatMap((pass) => [
      ...Array.from({ length: repeats }, () => plainLook('all-holes', pass, speed, place)),
      plainLook('blank', pass, speed, place),
    ]),
  ),
]

/** By look the one that excludes it: the same pass of the run at the other speed; itself where there is none. */
export const twinsOf = (looks: readonly ProofLook[]): number[] =>
  looks.map(({ pass }, n) => {
    if (pass.pass === undefined) return n
    const twin = looks.findIndex((other, m) => m !== n && other.pass.pass === pass.pass)
    return twin < 0 ? n : twin
  })

/** Whether a look needs a pass at the ordinary speed before it. */
export const isFast = ({ view }: ProofLook): boolean => view.speed > dimensions.speed

/** Full rows before blank ones, each in turns to the right and to the left, as the carriage goes. */
const plainInOrder = (looks: readonly ProofLook[]): ProofLook[] =>
  (['all-holes', 'blank'] as const).flatMap((card) => {
    const own = looks.filter(({ pass }) => pass.card === card)
    const [right, left] = ([1, -1] as const).map((way) => own.filter(({ pass }) => pass.way === way))
    return own.flatMap((_, n) => [...right!.slice(n, n + 1), ...left!.slice(n, n + 1)])
  })

/** Looks in the order in which to make them: full and blank rows at the ordinary speed, then the run, then fast ones. */
export const inOrder = (looks: readonly ProofLook[]): ProofLook[] => {
  const plain = looks.filter(({ view }) => view.shift === null)
  return [
    ...plainInOrder(plain.filter((look) => !isFast(look))),
    ...looks
      .filter(({ view }) => view.shift !== null)
      .sort((one, other) => one.view.pass - other.view.pass || one.view.speed - other.view.speed),
    ...plainInOrder(plain.filter(isFast)),
  ]
}
