import { usualPlace } from '@/mechanism/bed.ts'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare, fitOf, gainOf, visibleOf, type Observation, observationOf } from '@/find/evidence.ts'
import { letters } from '@/find/letters.ts'
import { codes, packChange } from '@/find/packed-change.ts'
import { type Shown, settingOf } from '@/find/shown.ts'
import { soundBeds } from '@/find/sound.ts'
import { gainOfAll } from '@/find/fault-class.ts'

const slip = 0.04
const right = Math.log(1 - slip)
const wrong = Math.log(slip / 2)

/** A bed whose needles under columns 1 to 12 a sound machine selects, and leaves plain the others. */
const setting = settingOf({ card: [0xfff000], pass: 1, speed: 500, shift: 0, ...usualPlace }, soundBeds())
const [selected, plain] = [100, 112]

const shown = (chance: number, ...changes: readonly [number, keyof typeof codes][]): Shown => ({
  changed: Uint16Array.from(changes, ([needle, came]) => packChange(needle, codes[came])),
  chance,
})
const none = shown(0)

/** A bed on which only these needles were looked at. */
const noted = (marks: Readonly<Record<number, string>>): Observation => {
  const letters = new Array<string>(200).fill('?')
  for (const [needle, letter] of Object.entries(marks)) letters[Number(needle)] = letter
  return observationOf(setting, letters.join(''), slip)
}

describe('a noted bed', () => {
  test('is noted in four letters', () => {
    expect(letters).toBe('spu?')
  })

  test('is as likely on a sound machine as its right and wrong letters together', () => {
    const { looked, log } = noted({ [selected]: 's', [plain]: 'p', 101: 'p', 113: 'u' })
    expect(looked).toBe(4)
    expect(log).toBeCloseTo(2 * right + 2 * wrong, 12)
  })

  test('says nothing of needles not looked at, of letters that are none, and of those that are missing', () => {
    for (const text of ['?'.repeat(200), 'x'.repeat(200), 'S'.repeat(200), '']) {
      const { looked, log, noted: marks } = observationOf(setting, text, slip)
      expect([looked, log]).toEqual([0, 0])
      expect(new Set(marks)).toEqual(new Set([-1]))
    }
    expect(observationOf(setting, 'p', slip).looked).toBe(1)
  })
})

describe('by how much a prediction makes a note likelier', () => {
  test.each([
    ['s', 'plain', wrong - right],
    ['p', 'plain', right - wrong],
    ['u', 'plain', 0],
    ['p', 'unmoved', 0],
    ['u', 'unmoved', right - wrong],
    ['?', 'unmoved', 0],
  ] as const)('a selected needle noted %s, predicted %s', (letter, came, gain) => {
    expect(gainOf(noted({ [selected]: letter }), shown(0, [selected, came]))).toBeCloseTo(gain, 12)
  })

  test('is nothing where it changes nothing', () => {
    expect(gainOf(noted({ [selected]: 'p' }), none)).toBe(0)
  })

  test('is, where plain needles may be late, that of both ways in which each may have come', () => {
    const late = 0.3
    const at = (letter: string, needle: number): number => gainOf(noted({ [needle]: letter }), shown(late))
    expect(at('s', plain)).toBeCloseTo(Math.log(late * (1 - slip) + (1 - late) * (slip / 2)) - wrong, 12)
    expect(at('p', plain)).toBeCloseTo(Math.log(late * (slip / 2) + (1 - late) * (1 - slip)) - right, 12)
    expect(at('u', plain)).toBeCloseTo(0, 12)
    expect(at('?', plain)).toBe(0)
    expect(at('s', selected)).toBe(0)
    expect(at('p', selected)).toBe(0)
  })

  const beds = fc.array(fc.constantFrom('s', 'p', 'u', '?'), { minLength: 200, maxLength: 200 })
  const changes = fc.uniqueArray(fc.tuple(fc.nat(199), fc.constantFrom('plain', 'unmoved', 'selected')), {
    selector: ([needle]) => needle,
    maxLength: 30,
  })
  const chances = fc.constantFrom(0, 0.2, 0.9)

  test('is the likelihood needle by needle, over that of the sound bed', () => {
    fc.assert(
      fc.property(beds, changes, chances, (letters, changed, chance) => {
        const observation = observationOf(setting, letters.join(''), slip)
        const prediction = shown(chance, ...changed)
        const came = [...observation.sound]
        for (const [needle, outcome] of changed) came[needle] = codes[outcome]
        const ofNote = (note: number, code: number): number => (note === code ? 1 - slip : slip / 2)
        let log = 0
        for (const [needle, letter] of letters.entries()) {
          if (letter === '?') continue
          const note = 'spu'.indexOf(letter)
          const code = came[needle]!
          const share = code === codes.plain ? chance : 0
          log += Math.log(share * ofNote(note, codes.selected) + (1 - share) * ofNote(note, code))
        }
        expect(gainOf(observation, prediction)).toBeCloseTo(log - observation.log, 8)
        expect(gainOfAll([observation, observation], [prediction, none])).toBeCloseTo(
          log - observation.log,
          8,
        )
      }),
    )
  })

  test('counts the needles that depart, that are explained, and that speak against it', () => {
    fc.assert(
      fc.property(beds, changes, chances, (letters, changed, chance) => {
        const observation = observationOf(setting, letters.join(''), slip)
        const came = [...observation.sound]
        for (const [needle, outcome] of changed) came[needle] = codes[outcome]
        const looked = letters.flatMap((letter, needle) => (letter === '?' ? [] : [needle]))
        const isMet = (needle: number): boolean =>
          letters[needle] === 'spu'[came[needle]!] ||
          (chance > 0 && letters[needle] === 's' && came[needle] === codes.plain)
        const departs = looked.filter((needle) => letters[needle] !== 'spu'[observation.sound[needle]!])
        expect(fitOf([observation], [shown(chance, ...changed)])).toEqual({
          departures: departs.length,
          explained: departs.filter(isMet).length,
          against: looked.filter((needle) => !isMet(needle)).length,
          looked: looked.length,
        })
      }),
    )
  })
})

describe('what a note could show of a prediction', () => {
  const prediction = shown(0.4, [selected, 'plain'], [plain, 'selected'])

  test('is all of it where every needle was looked at', () => {
    expect(visibleOf(observationOf(setting, 's'.repeat(200), slip), prediction)).toBe(prediction)
  })

  test('is its changes on the needles looked at, and its chance where there are any', () => {
    const seen = visibleOf(noted({ [plain]: 'p', 5: 's' }), prediction)
    expect([...seen.changed]).toEqual([packChange(plain, codes.selected)])
    expect(seen.chance).toBe(0.4)
    expect(visibleOf(noted({}), prediction)).toEqual({ changed: new Uint16Array(0), chance: 0 })
  })
})

describe('a comparison', () => {
  test('goes by the needles looked at, from the left', () => {
    const calls: [number, boolean, boolean][] = []
    compare(
      noted({ [plain]: 's', [selected]: 'p', 101: 's', 5: 'u' }),
      shown(0, [selected, 'plain']),
      (...call) => calls.push(call),
    )
    expect(calls).toEqual([
      [5, true, false],
      [selected, true, true],
      [101, false, true],
      [plain, true, false],
    ])
  })

  test('without a prediction is with the sound bed', () => {
    const { departures, explained, against } = fitOf([noted({ [selected]: 'p', [plain]: 's' })], [])
    expect([departures, explained, against]).toEqual([2, 0, 2])
    const bed = [...setting.sound.codes].map((code) => 'spu'[code]).join('')
    for (const shown of [[], [none]])
      expect(fitOf([observationOf(setting, bed, slip)], shown)).toMatchObject({ against: 0, looked: 200 })
    const turned = settingOf({ card: [0x000fff], pass: 1, speed: 500, shift: 0, ...usualPlace }, soundBeds())
    const other = [...turned.sound.codes].map((code) => 'spu'[code]).join('')
    expect(fitOf([observationOf(turned, other, slip)], []).against).toBe(0)
  })

  test('adds up over the views', () => {
    const one = noted({ [selected]: 'p' })
    expect(fitOf([one, noted({ [plain]: 'p' })], [shown(0, [selected, 'plain']), none])).toEqual({
      departures: 1,
      explained: 1,
      against: 0,
      looked: 2,
    })
  })
})
