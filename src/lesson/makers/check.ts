import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { type Check, checks, type Finding, minutesOf } from '../checks.ts'
import { type Draw, firstGood } from '../draw.ts'
import type { Kit, Maker, NextCheck, Option } from '../question.ts'
import {
  broken,
  everyColumn,
  mainRows,
  ownRow,
  passOf,
  rowWith,
  type Scene,
  someStretch,
  sorted,
  type Stretch,
  textOf,
} from '../scene.ts'
import { bedKey, bedPicture, wrongIn } from '../seen.ts'
import { columnsOf } from './columns.ts'
import { withFault } from './suspects.ts'

const { columns, strips, speed } = dimensions
const offered = 4

/** Two suspects for one and the same bed. */
interface Pair {
  readonly scene: Scene
  readonly stretch: Stretch
  readonly suspects: readonly [Fault, Fault]
}

type PairMaker = (draw: Draw, rows: number) => Pair

const findings = ({ library }: Kit, { scene, stretch, suspects }: Pair, check: Check): [Finding, Finding] => [
  check.finds(library, withFault(scene, suspects[0]), stretch),
  check.finds(library, withFault(scene, suspects[1]), stretch),
]

const optionOf = (kit: Kit, pair: Pair, check: Check, best: Check): Option => {
  const { scene, stretch, suspects } = pair
  const [one, other] = findings(kit, pair, check)
  const takes = (some: Check): string =>
    `takes ${minutesOf(some)}${some.opens ? ' and opens the machine' : ''}`
  const reason =
    check === best
      ? `With “${faultPhrase(suspects[0])}” it finds ${one.words}, with “${faultPhrase(suspects[1])}” ${other.words}, and nothing cheaper tells them apart.`
      : one.key === other.key
        ? `“${check.label}” finds ${one.words} with either fault, so it settles nothing.`
        : `“${check.label}” would tell them apart, but it ${takes(check)}, and “${best.label}” settles it in ${minutesOf(best)}.`
  return {
    id: check.id,
    label: check.label,
    note: `${minutesOf(check)}${check.opens ? ', opens the machine' : ''}`,
    right: check === best,
    reason,
    show: textOf(kit.library, sorted(check.scene(withFault(scene, suspects[0])), stretch)),
  }
}

/** Asks for the cheapest check that tells two suspects apart; null where they do not give the same bed. */
const ask = (kit: Kit, pair: Pair): NextCheck | null => {
  const { draw, library } = kit
  const { scene, stretch, suspects } = pair
  const [one, other] = suspects.map((fault) => passOf(library, withFault(scene, fault)))
  if (!one || !other || bedKey(one, stretch) !== bedKey(other, stretch)) return null
  if (wrongIn(one, stretch).length === 0) return null
  const settling = checks.filter((check) => {
    const [first, second] = findings(kit, pair, check)
    return first.key !== second.key
  })
  const [best] = settling
  if (!best) return null
  const [first, second] = findings(kit, pair, best)
  if (first.words === second.words) return null
  const dearer = settling.slice(1)
  const others = checks.filter((check) => !settling.includes(check))
  const some = [best, ...draw.some(dearer, 1)]
  const all = [...some, ...draw.some(others, offered - some.length)]
  return {
    kind: 'check',
    prompt: `This bed may mean either of two faults: “${faultPhrase(suspects[0])}” or “${faultPhrase(suspects[1])}”. Which is the cheapest check that tells them apart?`,
    state: textOf(library, scene),
    pictures: [bedPicture(one, stretch, scene)],
    options: checks.filter((check) => all.includes(check)).map((check) => optionOf(kit, pair, check, best)),
  }
}

const maker =
  (...pairs: readonly PairMaker[]): Maker =>
  (kit) =>
    firstGood(() => ask(kit, kit.draw.pick(pairs)(kit.draw, mainRows(kit.library).length)))

/** A pass whose row stands in the main card, and whose next rows do too. */
const somePass = (draw: Draw, rows: number): number => draw.whole(1, rows - 3)

const aboutColumn =
  (suspects: (pass: number, column: number) => readonly [Fault, Fault]): PairMaker =>
  (draw, rows) => {
    const pass = somePass(draw, rows)
    const column = draw.pick(everyColumn)
    return {
      scene: { pass },
      stretch: someStretch(draw, 2 * columns),
      suspects: suspects(pass, column),
    }
  }

const pinOrRocker = aboutColumn((_, column) => [broken('pin.low', [column]), broken('rocker.dead', [column])])
const holeOrRocker = aboutColumn((pass, column) => [
  broken('card.blocked', [pass, column]),
  broken('rocker.dead', [column]),
])
const tornOrPin = aboutColumn((pass, column) => [
  broken('card.torn', [pass, column]),
  broken('pin.high', [column]),
])
const stripOrRocker = aboutColumn((_, column) => [
  broken('strip.seized', [((column - 1) % strips) + 1]),
  broken('rocker.dead', [column]),
])

const wholeBed =
  (...suspects: readonly [Fault, Fault]): PairMaker =>
  (draw, rows) => ({
    // To the right, so that both suspects show.
    scene: { pass: 2 * Math.ceil(somePass(draw, rows) / 2) - 1 },
    stretch: someStretch(draw, columns),
    suspects,
  })

const gateOrPresser = wholeBed(broken('gate.1.low'), broken('presser.right.worn'))
const beltOrSweep = wholeBed(broken('belt.timing'), broken('sweep.worn'))
const sideOrGate = wholeBed(broken('card.side'), broken('gate.1.low'))

const aboutNeedle =
  (suspects: (needle: number, column: number) => readonly [Fault, Fault], fast = speed): PairMaker =>
  (draw, rows) => {
    const stretch = someStretch(draw, columns)
    const column = draw.pick(everyColumn)
    return {
      scene: { pass: somePass(draw, rows), speed: fast },
      stretch,
      suspects: suspects(stretch.first + column - 1, column),
    }
  }

const catchOrNeedle = aboutNeedle((needle) => [
  broken('catch.broken', [needle]),
  broken('needle.bent', [needle]),
])
const stiffOrPin = aboutNeedle((needle, column) => [
  broken('needle.stiff', [needle]),
  broken('pin.high', [column]),
])

/** Thick oil or a strip stuck shifted: one row of which both make the same. */
const slowOrOver: PairMaker = (draw) => {
  const strip = draw.whole(1, strips)
  const mine = columnsOf(strip)
  const others = everyColumn.filter((column) => !mine.includes(column))
  return {
    scene: {
      card: ownRow(rowWith([...draw.some(mine, 2), ...draw.some(others, 8)])),
      speed: 1.5 * speed,
      pass: draw.whole(1, 2),
    },
    stretch: someStretch(draw, columns),
    suspects: [broken('strip.slow', [strip]), broken('strip.over', [strip])],
  }
}

/** Checks about pins, their card and their rockers. */
export const pinCheck = maker(pinOrRocker, holeOrRocker, tornOrPin)
/** Checks about gates, presser and needles. */
export const camCheck = maker(gateOrPresser, sideOrGate, stiffOrPin)
/** Checks that take another row, another speed or another way. */
export const runCheck = maker(slowOrOver, stripOrRocker, stiffOrPin, gateOrPresser)
/** Checks on the bench, those that need the machine opened among them. */
export const benchCheck = maker(pinOrRocker, beltOrSweep, catchOrNeedle, holeOrRocker)
/** Any of them. */
export const anyCheck = maker(stripOrRocker, tornOrPin, sideOrGate, slowOrOver, gateOrPresser)
