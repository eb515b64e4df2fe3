import { describe, expect, test } from 'vitest'
import { commandOf } from '@/features/class/shared/keys.ts'

const plain = { shiftKey: false, altKey: false, ctrlKey: false, metaKey: false }
const press = (key: string, held: Partial<typeof plain> = {}): string | undefined =>
  commandOf({ key, ...plain, ...held })

describe('what clickers send', () => {
  test.each([
    ['PageDown', 'forward'],
    ['PageUp', 'back'],
    ['ArrowRight', 'forward'],
    ['ArrowLeft', 'back'],
    ['.', 'blank'],
    ['b', 'blank'],
    ['F5', 'full'],
  ])('%s leads the class: %s', (key, command) => {
    expect(press(key)).toBe(command)
  })

  test('the button that begins from the slide shown sends F5 with shift, and begins, too', () => {
    expect(press('F5', { shiftKey: true })).toBe('full')
  })

  test('Esc stays the browser’s: it ends the whole screen', () => {
    expect(press('Escape')).toBeUndefined()
  })
})

test('letters work in both cases of Caps Lock, and not with a key of the browser’s', () => {
  expect([press('n'), press('N'), press('w'), press('K')]).toEqual(['speaker', 'speaker', 'full', 'help'])
  for (const held of [{ ctrlKey: true }, { altKey: true }, { metaKey: true }, { shiftKey: true }])
    expect(press('n', held)).toBeUndefined()
})

test('these letters and no others are keys', () => {
  const letters = Array.from('abcdefghijklmnopqrstuvwxyz').filter((letter) => press(letter) !== undefined)
  expect(letters.join('')).toBe('bkmnpqrw')
  for (const sign of ['?', '/', ',']) expect(press(sign)).toBeUndefined()
})

test('shift turns the space bar round', () => {
  expect([press(' '), press(' ', { shiftKey: true })]).toEqual(['forward', 'back'])
})
