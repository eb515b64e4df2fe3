import type { Frame } from '../../mechanism/frame.ts'
import { type Part, parsePart } from '../../mechanism/part.ts'
import type { Run } from '../../mechanism/pass.ts'
import { type NumberedPart, numberedParts } from '../numbered-parts.ts'
import { flagWords, subjectSentence } from '../subject.ts'
import { listed } from '../lists.ts'
import { type SceneViewName, sceneViewNames, sceneWords } from './scene.ts'

/** The kinds of part by which a step says what is there, each with the parts that it brings a name for. */
export const sceneKinds = {
  bed: ['bed'],
  needles: ['needle', 'butt'],
  carriage: ['carriage'],
  card: ['card'],
  feed: ['drum', 'pawl'],
  reader: [],
  pins: ['pin'],
  springs: ['leaf-spring', 'lift-spring', 'draw-bar'],
  sweep: ['sweep', 'belt'],
  rockers: ['rocker'],
  plate: ['plate'],
  strips: ['strip', 'catch'],
  spurs: ['spur'],
  guides: ['guide', 'return-spring'],
  retainer: ['retainer'],
  deck: ['deck'],
  presser: ['presser'],
  gates: ['gate.1', 'gate.2'],
} as const satisfies Readonly<Record<string, readonly NumberedPart[]>>

/** A kind of part that a step may name. */
export type SceneKind = keyof typeof sceneKinds

/** How a step shows the machine: from where, with which kinds of part, and whose path is brought out. */
export interface SceneStep {
  readonly view: SceneViewName
  /** All that the view has where it is null. */
  readonly layers: readonly SceneKind[] | null
  /** The needle or part that wears the flag; null for none. */
  readonly subject: Part | null
  /** Other needles and parts of which the step speaks: each has its name beside it. */
  readonly also: readonly Part[]
  /** What a hand presses, and which way. */
  readonly hands: readonly HandOnPart[]
  /** Whether two hands lift the carriage by its ends. */
  readonly isLifted: boolean
}

/** The needles and parts of which a step speaks: its subject first. */
export const partsOf = ({ subject, also }: SceneStep): readonly Part[] => [
  ...(subject ? [subject] : []),
  ...also,
]

/** The ways in which a hand pushes a part, each in words. */
const handWays = { down: 'down', left: 'to the left', right: 'to the right' } as const
export type HandWay = keyof typeof handWays

/** What a step's text has where two hands lift the carriage, one at either of its ends. */
const lifting = 'carriage:lift'

/** A part that a hand pushes, and the way. */
export interface HandOnPart {
  readonly part: Part
  readonly way: HandWay
}

/** What a step shows that says nothing else. */
export const wholeScene: SceneStep = {
  view: 'together',
  layers: null,
  subject: null,
  also: [],
  hands: [],
  isLifted: false,
}

/** The attributes of a step, as its text has them. */
export interface SceneAttributes {
  readonly view?: string | undefined
  readonly layers?: string | undefined
  readonly subject?: string | undefined
  readonly also?: string | undefined
  readonly hand?: string | undefined
}

const isKind = (word: string): word is SceneKind => Object.hasOwn(sceneKinds, word)

/** The parts that a text names by their ids, with spaces between. Throws a RangeError where there is no such part. */
const partsIn = (text = ''): Part[] =>
  text
    .split(/\s+/)
    .filter((id) => id !== '')
    .map((id) => {
      const part = parsePart(id)
      if (!part) throw new RangeError(`there is no part “${id}”`)
      return part
    })

const isWay = (word: string | undefined): word is HandWay =>
  word !== undefined && Object.hasOwn(handWays, word)

/** The parts that a hand pushes, each with the way, as in `pin.12:down`; lifting hands are none of them. Throws a RangeError where there is no such way. */
const handsIn = (text = ''): HandOnPart[] =>
  text
    .split(/\s+/)
    .filter((pair) => pair !== '' && pair !== lifting)
    .flatMap((pair) => {
      const [id, way] = pair.split(':')
      if (!isWay(way))
        throw new RangeError(
          `a hand pushes no way “${way ?? ''}”; there are ${Object.keys(handWays).join(', ')}`,
        )
      return partsIn(id).map((part) => ({ part, way }))
    })

/** Reads how a step shows the machine. Throws a RangeError that says what there is where it names what there is not. */
export const readSceneStep = ({ view, layers, subject, also, hand }: SceneAttributes): SceneStep => {
  const name = sceneViewNames.find((each) => each === view)
  if (view !== undefined && name === undefined)
    throw new RangeError(`there is no view “${view}”; there are ${sceneViewNames.join(', ')}`)
  const words = layers?.split(/\s+/).filter((word) => word !== '')
  const unknown = words?.find((word) => !isKind(word))
  if (unknown !== undefined)
    throw new RangeError(
      `there is no kind of part “${unknown}”; there are ${Object.keys(sceneKinds).join(', ')}`,
    )
  const [part = null] = partsIn(subject)
  return {
    view: name ?? wholeScene.view,
    layers: words?.filter(isKind) ?? null,
    subject: part,
    also: partsIn(also),
    hands: handsIn(hand),
    isLifted: hand?.split(/\s+/).includes(lifting) === true,
  }
}

/** A step's picture of the machine in words: the view, the parts that are there, and what the subject is doing. */
export const describeStep = (
  run: Run,
  frame: Frame,
  { view, layers, subject, hands, isLifted }: SceneStep,
): string => {
  const parts = layers?.flatMap((kind) => sceneKinds[kind]).map((part) => numberedParts[part].name)
  return [
    `${sceneWords[view].title}.`,
    ...(parts ? [`Drawn here: ${listed(parts)}.`] : [sceneWords[view].shown]),
    ...(layers?.includes('carriage') === true && !isLifted
      ? [`The carriage goes to the ${frame.pass.way === 1 ? 'right' : 'left'}.`]
      : []),
    ...(subject ? [subjectSentence(run, frame, subject)] : []),
    ...(hands.length > 0
      ? [`A hand pushes ${listed(hands.map(({ part, way }) => `${flagWords(part)} ${handWays[way]}`))}.`]
      : []),
    ...(isLifted ? ['Two hands lift the carriage, one at either of its ends.'] : []),
  ].join(' ')
}
