import { describe, expect, test } from 'vitest'
import { drawsOf } from '@/commands/bench/draws.ts'
import { kindsInTurn, type MachineKind } from '@/commands/bench/kinds.ts'
import { type BenchMachine, looksAt, machinesOf } from '@/commands/bench/machine.ts'
import { notedBeds, queryOf } from '@/commands/bench/notes.ts'
import { bedsOf, truthOf } from '@/commands/bench/truth.ts'
import { placeOfFault } from '@/find/place.ts'
import { wayOfPass } from '@/mechanism/bed.ts'
import { everyHole } from '@/mechanism/card.ts'
import { faultId } from '@/mechanism/fault.ts'
import { contradict } from '@/mechanism/fault-list.ts'
import { faultOf, readFault } from '@/mechanism/read-fault.ts'
import { lookAt } from './looks.ts'

const machines = machinesOf(3, 120)

describe('machines of the bench', () => {
  test('are the same for the same seed, and others for another', () => {
    expect(machinesOf(3, 20)).toEqual(machines.slice(0, 20))
    expect(machinesOf(4, 20)).not.toEqual(machines.slice(0, 20))
  })

  test('are of each kind in turn, and of one in ten with the oil set twice', () => {
    expect(kindsInTurn).toHaveLength(10)
    expect(machines.map(({ kind }) => kind)).toEqual(machines.map((_, n) => kindsInTurn[n % 10]))
    expect(kindsInTurn.filter((kind) => kind === 'set oil')).toHaveLength(2)
  })

  test('have at most twelve faults, each one that a link can name, and no two that contradict', () => {
    for (const { faults } of machines) {
      expect(faults.length).toBeLessThanOrEqual(12)
      for (const [n, fault] of faults.entries()) {
        expect(readFault(faultId(fault))).toMatchObject({ kind: 'fault', remark: null })
        expect(faults.slice(0, n).filter((other) => contradict(fault, other))).toEqual([])
      }
    }
    expect(machines.some(({ faults }) => faults.length === 12)).toBe(true)
  })

  type Is = (machine: BenchMachine) => boolean
  const count = ({ faults }: BenchMachine, pattern: RegExp): number =>
    faults.filter((fault) => pattern.test(faultId(fault))).length

  test.each<[MachineKind, number, Is]>([
    ['one fault', 1, ({ faults }) => faults.length === 1],
    ['old oil', 0.6, (machine) => count(machine, /^strip/) > 0],
    ['set oil', 0.8, (machine) => count(machine, /^strip/) > 2],
    ['gummed pins', 1, (machine) => count(machine, /^pin/) >= 3],
    ['worn', 1, ({ wear }) => wear >= 0.6 && wear <= 0.9],
    [
      'one of the whole bed',
      1,
      (machine) => count(machine, /^(belt|turn|pawl|sweep|presser|gate|card)/) === 1,
    ],
    ['rattling pivots', 1, (machine) => count(machine, /^pivots/) === 1],
    ['a setting', 1, ({ faults, isCardOut }) => faults.length + Number(isCardOut) === 1],
    ['sound', 1, ({ faults, isCardOut }) => faults.length === 0 && !isCardOut],
  ])('that are of the kind “%s” have what it says', (kind, share, is) => {
    const those = machines.filter((machine) => machine.kind === kind)
    expect(those.filter(is).length / those.length).toBeGreaterThanOrEqual(share)
  })

  test('have a card of a full row, a blank one and six of half the holes', () => {
    for (const { card } of machines) {
      expect(card).toHaveLength(8)
      expect(card.filter((row) => row === everyHole)).toHaveLength(1)
      expect(card.filter((row) => row === 0)).toHaveLength(1)
    }
    const holes = machines
      .flatMap(({ card }) => card)
      .reduce((sum, row) => sum + row.toString(2).replaceAll('0', '').length, 0)
    expect(holes / (machines.length * 8 * 24)).toBeCloseTo(0.5, 1)
  })

  test('are looked at row by row, and mostly at two rows again, which lie under the pins again', () => {
    const again = machines.filter(({ looks }) => looks.length === 10)
    expect(again.length / machines.length).toBeCloseTo(0.65, 1)
    for (const { card, looks } of machines) {
      expect(looks.slice(0, 8).map(({ pass, modelPass, speed }) => [pass, modelPass, speed])).toEqual(
        card.map((_, n) => [n + 1, n + 1, 500]),
      )
      for (const { row, way, pass, modelPass } of looks)
        expect([row, way]).toEqual([pass, wayOfPass(modelPass)])
      for (const [n, look] of looks.slice(8).entries()) expect([look.pass, look.speed]).toEqual([n + 1, 900])
    }
  })

  test.each([
    'pawl.right',
    'pawl.left',
    'pawl.double',
    'turn.twice',
    'card.locked',
    'pawl.skips.2',
    'pawl.jumps.2',
    'turn.short.2',
    'pawl.skips.5',
    'pawl.jumps.7',
    'turn.short.3',
    'card.reversed',
  ])('show the same row again although the card does not step as it should: %s', (id) => {
    const card = Array.from({ length: 8 }, (_, n) => 0x3 << (3 * n))
    const beds = bedsOf({
      card,
      isCardOut: false,
      faults: [faultOf(id)],
      wear: 0,
      seed: 1,
      looks: looksAt(card, 2),
    })
    expect(beds.slice(8)).toEqual(beds.slice(0, 2))
  })

  test('are drawn again in the same row again where they differ from pass to pass', () => {
    const card = [everyHole, everyHole]
    const loose = {
      card,
      isCardOut: false,
      faults: [faultOf('pivots.loose=0.6')],
      wear: 0,
      seed: 1,
      looks: looksAt(card, 2),
    }
    const [first, , again] = bedsOf(loose)
    expect(again).not.toBe(first)
  })
})

describe('what is wrong with a machine', () => {
  const machine = {
    card: [everyHole, 0],
    isCardOut: false,
    faults: [faultOf('needle.R3.gone'), faultOf('strip.3.seized'), faultOf('pin.5.low')],
    wear: 0,
    seed: 1,
    looks: [lookAt(1), lookAt(2)],
  }

  test('is each place, with the notes that would be others were it alone mended', () => {
    expect([...truthOf(machine)]).toEqual([
      ['needle.R3', 2],
      ['strip.3', 24],
      ['column.5', 8],
    ])
  })

  test('does not show where another fault hides it', () => {
    const faults = [faultOf('strip.3.seized'), faultOf('pin.3.low'), faultOf('catch.R3.broken')]
    expect([...truthOf({ ...machine, faults })]).toEqual([
      ['strip.3', 16],
      ['column.3', 0],
      ['needle.R3', 0],
    ])
  })

  test('is the card where there is none in the reader, and a place once for all its faults', () => {
    expect([...truthOf({ ...machine, faults: [], isCardOut: true })]).toEqual([['card', 200]])
    const twice = [faultOf('pin.7.low'), faultOf('rocker.7.dead')]
    expect([...truthOf({ ...machine, faults: twice }).keys()]).toEqual(['column.7'])
  })

  test('is nothing on a sound machine, and a place for every fault that comes to the bench', () => {
    expect(truthOf({ ...machine, faults: [] }).size).toBe(0)
    for (const each of machines.slice(0, 30))
      expect([...truthOf(each).keys()].filter((place) => place !== 'card' || !each.isCardOut)).toEqual([
        ...new Set(each.faults.map(placeOfFault)),
      ])
  })
})

describe('notes', () => {
  const beds = machines.slice(0, 40).map((machine) => bedsOf(machine))

  test('are wrong for three needles in a thousand', () => {
    const draws = drawsOf(1)
    let wrong = 0
    let letters = 0
    for (const bed of beds)
      for (const [n, noted] of notedBeds(bed, draws).entries())
        for (const [needle, letter] of Array.from(noted).entries()) {
          expect('spu').toContain(letter)
          letters++
          if (letter !== bed[n]![needle]) wrong++
        }
    expect(wrong / letters).toBeGreaterThan(0.002)
    expect(wrong / letters).toBeLessThan(0.004)
  })

  test('are asked about as a person would: with the card, row, way, speed and pass of each look', () => {
    const [machine] = machines
    const { card, passes, checks } = queryOf(machine!, beds[0]!)
    expect(card).toEqual(machine!.card)
    expect(checks).toEqual([])
    expect(passes.map(({ row, way, speed, needles }) => ({ row, way, speed, needles }))).toEqual(
      machine!.looks.map(({ row, way, speed }, n) => ({ row, way, speed, needles: beds[0]![n] })),
    )
  })
})
