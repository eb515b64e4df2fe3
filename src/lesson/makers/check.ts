import { allColumns } from '../../mechanism/indices.ts'
import { dimensions } from '../../mechanism/dimensions.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { minutesWords } from '../../words/pace.ts'
import { type Check, checks, type CheckFinding, isDearer } from '../checks.ts'
import { firstValid } from '../seeded-random.ts'
import type { Kit, Maker, NextCheck, Option } from '../question.ts'
import { type NeedleRange, someRange } from '../needle-range.ts'
import {
  columnsOf,
  broken,
  mainCardRows,
  ownRow,
  passOf,
  rowWith,
  type Setup,
  sorted,
  linkText,
} from '../setup.ts'
import { outcomesKey, bedPicture, departuresIn } from '../bed-view.ts'
import { withFault } from './part-question.ts'

const { columns, strips, speed } = dimensions
const offered = 4

/** Two suspects for one and the same bed. */
interface Pair {
  readonly setup: Setup
  readonly range: NeedleRange
  readonly suspects: readonly [Fault, Fault]
}

type PairMaker = (kit: Kit, rows: number) => Pair

const findings = (kit: Kit, { setup, range, suspects }: Pair, check: Check): [CheckFinding, CheckFinding] => [
  check.finds(kit, withFault(setup, suspects[0]), range),
  check.finds(kit, withFault(setup, suspects[1]), range),
]

const optionOf = (kit: Kit, pair: Pair, check: Check, best: Check): Option => {
  const { setup, range, suspects } = pair
  const [one, other] = findings(kit, pair, check)
  const takes = (some: Check): string =>
    `takes ${minutesWords(some)}${some.opens ? ' and opens the machine' : ''}`
  const reason =
    check === best
      ? `With “${faultPhrase(suspects[0])}” it finds ${one.words}, with “${faultPhrase(suspects[1])}” ${other.words}, and nothing cheaper tells them apart.`
      : one.key === other.key
        ? `“${check.label}” finds ${one.words} with either fault, so it settles nothing.`
        : `“${check.label}” would tell them apart, but it ${takes(check)}, and “${best.label}” settles it in ${minutesWords(best)}.`
  return {
    id: check.id,
    label: check.label,
    note: `${minutesWords(check)}${check.opens ? ', opens the machine' : ''}`,
    right: check === best,
    reason,
    show: linkText(kit, sorted(check.setup(withFault(setup, suspects[0])), range)),
  }
}

/** Asks for the cheapest check that tells two suspects apart; null where they do not give the same bed. */
const ask = (kit: Kit, pair: Pair): NextCheck | null => {
  const { random } = kit
  const { setup, range, suspects } = pair
  const [one, other] = suspects.map((fault) => passOf(kit, withFault(setup, fault)))
  if (!one || !other || outcomesKey(one, range) !== outcomesKey(other, range)) return null
  if (departuresIn(one, range).length === 0) return null
  const settling = checks.filter((check) => {
    const [first, second] = findings(kit, pair, check)
    return first.key !== second.key
  })
  const [best] = settling
  if (!best) return null
  const [first, second] = findings(kit, pair, best)
  if (first.words === second.words) return null
  // A check that costs as much as the best would be right too, so none is offered.
  const dearer = settling.filter((check) => isDearer(check, best))
  const others = checks.filter((check) => !settling.includes(check))
  const some = [best, ...random.some(dearer, 1)]
  const all = [...some, ...random.some(others, offered - some.length)]
  return {
    kind: 'check',
    prompt: `This bed may mean either of two faults: “${faultPhrase(suspects[0])}” or “${faultPhrase(suspects[1])}”. Which is the cheapest check that tells them apart?`,
    state: linkText(kit, setup),
    pictures: [bedPicture(one, range, setup)],
    options: checks.filter((check) => all.includes(check)).map((check) => optionOf(kit, pair, check, best)),
  }
}

const maker =
  (...pairs: readonly PairMaker[]): Maker =>
  (kit) =>
    firstValid(() => ask(kit, kit.random.pick(pairs)(kit, mainCardRows(kit.library).length)))

/** A pass that reads the card row of its own number, as the three passes after it do. */
const somePass = ({ random }: Kit, rows: number): number => random.whole(1, rows - 3)

const aboutColumn =
  (suspects: (pass: number, column: number) => readonly [Fault, Fault]): PairMaker =>
  (kit, rows) => {
    const pass = somePass(kit, rows)
    const column = kit.random.pick(allColumns)
    return {
      setup: { pass },
      range: someRange(kit, 2 * columns),
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
  (kit, rows) => ({
    // To the right, so that both suspects show.
    setup: { pass: 2 * Math.ceil(somePass(kit, rows) / 2) - 1 },
    range: someRange(kit, columns),
    suspects,
  })

const gateOrPresser = wholeBed(broken('gate.1.low'), broken('presser.right.worn'))
const beltOrSweep = wholeBed(broken('belt.timing'), broken('sweep.worn'))
const sideOrGate = wholeBed(broken('card.side'), broken('gate.1.low'))

const aboutNeedle =
  (suspects: (needle: number, column: number) => readonly [Fault, Fault], fast = speed): PairMaker =>
  (kit, rows) => {
    const range = someRange(kit, columns)
    const column = kit.random.pick(allColumns)
    return {
      setup: { pass: somePass(kit, rows), speed: fast },
      range,
      suspects: suspects(range.first + column - 1, column),
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
const slowOrOver: PairMaker = (kit) => {
  const { random } = kit
  const strip = random.whole(1, strips)
  const mine = columnsOf(strip)
  const others = allColumns.filter((column) => !mine.includes(column))
  return {
    setup: {
      card: ownRow(rowWith([...random.some(mine, 2), ...random.some(others, 8)])),
      speed: 1.5 * speed,
      pass: random.whole(1, 2),
    },
    range: someRange(kit, columns),
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
