import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import {
  type Opening,
  openedBy,
  openingMinutes,
  openings,
  openingsOf,
  type RepairId,
  repairIds,
  repairOf,
  repairOfKind,
  repairs,
} from '@/find/repairs.ts'
import { type FaultKindName, faultKindNames } from '@/mechanism/fault-kinds.ts'

const kinds = [...faultKindNames, 'card.out'] as const

describe('the ways to work', () => {
  test.each(kinds)('mend %s by exactly one of them', (kind) => {
    expect(repairs.filter(({ mends }) => mends.includes(kind))).toHaveLength(1)
    expect(repairOf(repairOfKind(kind)).mends).toContain(kind)
  })

  test('mend nothing that the catalogue does not have, and so not wear itself', () => {
    expect(repairs.flatMap(({ mends }) => mends).sort()).toEqual([...kinds].sort())
  })

  test.each<[FaultKindName | 'card.out', RepairId]>([
    ['carriage.plain', 'settings'],
    ['belt.off', 'settings'],
    ['card.out', 'card'],
    ['card.torn', 'card'],
    ['retainer.worn', 'retainer'],
    ['needle.bent', 'needles'],
    ['belt.timing', 'belt'],
    ['gate.1.high', 'carriage'],
    ['strip.slow', 'strips'],
    ['catch.broken', 'catches'],
    ['pawl.skips', 'turn'],
    ['pin.sticky', 'reader'],
    ['pivots.loose', 'reader'],
  ])('mend %s by %s', (kind, id) => {
    expect(repairOfKind(kind)).toBe(id)
  })

  test('are each in the table once, in the order of their ids, with numbers that make sense', () => {
    expect(repairs.map(({ id }) => id)).toEqual(repairIds)
    for (const { minutes, risk } of repairs) {
      expect(minutes.first).toBeGreaterThan(0)
      expect(minutes.further).toBeGreaterThan(0)
      expect(minutes.further).toBeLessThanOrEqual(minutes.first)
      expect(risk).toBeGreaterThanOrEqual(1)
    }
  })

  test('warn of what the site has a caution for', () => {
    const cautions = readdirSync('content/cautions').map((name) => name.replace('.md', ''))
    for (const { id, cautions: own } of repairs) {
      for (const caution of own) expect(cautions, id).toContain(caution)
      expect(new Set(own).size).toBe(own.length)
    }
    const unplugged = repairs.filter(({ cautions: own }) => own.includes('unplug')).map(({ id }) => id)
    expect(unplugged).toEqual(['belt', 'carriage', 'strips', 'catches', 'turn', 'reader'])
    const cleaned = repairs.filter(({ tools }) => tools.includes('solvent')).map(({ id }) => id)
    expect(repairs.filter(({ cautions: own }) => own.includes('solvents')).map(({ id }) => id)).toEqual(
      cleaned,
    )
  })

  test('throw where nothing mends it', () => {
    expect(() => repairOfKind('wear' as FaultKindName)).toThrow(RangeError)
  })
})

describe('what comes off', () => {
  test.each<[readonly RepairId[], readonly Opening[], string]>([
    [[], [], 'nothing'],
    [['settings', 'card', 'belt'], [], 'nothing'],
    [['needles', 'retainer'], ['bar'], 'nothing'],
    [['carriage'], ['carriage'], 'nothing'],
    [['strips'], ['cover'], 'one-cover'],
    [['catches', 'strips', 'needles'], ['bar', 'cover', 'covers'], 'covers'],
    [['reader', 'strips'], ['cover', 'covers', 'reader'], 'reader'],
  ])('for %j is %j: %s', (ids, off, opened) => {
    expect(openingsOf(ids)).toEqual(off)
    expect(openedBy(off)).toBe(opened)
  })

  test('takes the longer the further in it is', () => {
    const minutes = openings.map((opening) => openingMinutes[opening])
    expect(minutes).toEqual([...new Set(minutes)].sort((one, other) => one - other))
    expect(repairs.at(-1)!.id).toBe('reader')
    expect(Math.max(...repairs.map(({ risk }) => risk))).toBe(repairOf('reader').risk)
  })
})
