import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readView, viewLimits, withoutView, withView, writeView } from '@/link/scene-view.ts'
import { sceneViewNames } from '@/words/figures/scene.ts'
import { mutated } from './mutated.ts'

const read = (text: string) => readView(text, sceneViewNames)

describe('where a drawing is seen from, in a link', () => {
  test.each(sceneViewNames)('%s is a view by its name', (name) => {
    expect(read(name)).toEqual({ kind: 'named', name })
  })

  test.each(['30.-20.100', '-179.90.400', '180.-90.50', '0.0.100'])('%s is read and written back', (text) => {
    const reading = read(text)
    expect(reading).toMatchObject({ kind: 'turned', remark: null })
    expect(reading.kind === 'turned' && writeView(reading.view)).toBe(text)
  })

  test('what is out of range is clamped, and said', () => {
    const reading = read('-500.95.9999')
    expect(reading).toMatchObject({
      kind: 'turned',
      view: { turned: viewLimits.turned[0], raised: viewLimits.raised[1], zoom: viewLimits.zoom[1] },
    })
    expect(reading.kind === 'turned' && reading.remark).toContain('-179.90.400')
  })

  test.each([
    '',
    'Front',
    '30.20',
    '30.20.100.4',
    '1e3.0.100',
    '30,20,100',
    '<b>',
    'constructor',
    '99999.0.100',
  ])('“%s” is no view, and it is said which there are', (text) => {
    const reading = read(text)
    expect(reading.kind).toBe('refused')
    expect(reading.kind === 'refused' && reading.reason).toContain('front, behind, below')
  })

  test.each([
    ['', '30.20.100', 'view=30.20.100'],
    ['v=1', 'below', 'view=below'],
    ['pass=3&at=R12', '30.20.100', 'pass=3&at=R12&view=30.20.100'],
    ['pass=3&note=view%3D', 'bed', 'pass=3&view=bed&note=view%3D'],
    ['pass=3&view=bed', 'below', 'pass=3&view=below'],
    ['pass=3', null, 'pass=3'],
  ])('%s with the view %s is %s', (state, view, text) => {
    expect(withView(state, view)).toBe(text)
    if (view !== null) expect(withoutView(text).view).toBe(view)
    expect(withoutView(text).state).not.toContain('view=')
  })

  test('is taken out of any link, and what it says is a place within its range, or refused', () => {
    const view = fc.oneof(
      fc.tuple(fc.integer(), fc.integer(), fc.integer()).map((numbers) => numbers.join('.')),
      fc.constantFrom(
        ...sceneViewNames,
        '٣.٣.٣',
        '0.0.0',
        '-0.-0.100',
        '30.20.100\n',
        '+1.2.100',
        'x'.repeat(9000),
      ),
      fc.string({ unit: 'binary' }),
    )
    fc.assert(
      fc.property(mutated, view, (link, text) => {
        const { state, view: found } = withoutView(`${link}&view=${text}`)
        expect(state.split('&').filter((pair) => pair.startsWith('view='))).toEqual([])
        const reading = read(found ?? '')
        if (reading.kind === 'refused') expect(reading.reason.length).toBeLessThan(200)
        if (reading.kind !== 'turned') return
        const { turned, raised, zoom } = reading.view
        for (const [value, [least, most]] of [
          [turned, viewLimits.turned],
          [raised, viewLimits.raised],
          [zoom, viewLimits.zoom],
        ] as const) {
          expect(value).toBeGreaterThanOrEqual(least)
          expect(value).toBeLessThanOrEqual(most)
        }
        const again = read(writeView(reading.view))
        expect(again).toMatchObject({ kind: 'turned', remark: null })
        expect(again.kind === 'turned' && writeView(again.view)).toBe(writeView(reading.view))
      }),
      { numRuns: 1000 },
    )
  })
})
