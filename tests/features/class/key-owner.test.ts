import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type FocusedKind, type HandInput, keepsKey } from '@/features/class/shared/key-owner.ts'

const clicker = fc.constantFrom('PageDown', 'PageUp')
const anyKey = fc.constantFrom('PageDown', 'PageUp', 'ArrowRight', 'ArrowDown', ' ', 'Home', 'End', 'b', 'q')
const kinds: readonly FocusedKind[] = ['nothing', 'field', 'control']
const inputs: readonly (HandInput | undefined)[] = [undefined, 'tab', 'pointer', 'escape', 'help']

describe('who gets a key in a window of a class', () => {
  test('after a mouse, Esc or a reload a clicker’s keys lead the class, whatever has the focus', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.constantFrom<HandInput | undefined>('pointer', 'escape', undefined),
        clicker,
        (focused, last, key) => !keepsKey(focused, last, key),
      ),
    )
  })

  test('what was reached by Tab keeps every key, and so does the list that a key has opened', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<FocusedKind>('field', 'control'),
        anyKey,
        (focused, key) => keepsKey(focused, 'tab', key) && keepsKey('control', 'help', key),
      ),
    )
  })

  test('a field that a mouse has pressed can be typed in', () => {
    for (const key of ['b', ' ', 'ArrowLeft', 'Home', 'End'])
      expect(keepsKey('field', 'pointer', key)).toBe(true)
  })

  test('where nothing has the focus, every key leads the class', () => {
    fc.assert(fc.property(fc.constantFrom(...inputs), anyKey, (last, key) => !keepsKey('nothing', last, key)))
  })
})
