import { describe, expect, test } from 'vitest'
import { followDrags } from '@/browser/pointer.ts'

/** As much of a picture as a drag needs, which counts its listeners. Its pixels are the page's. */
class Picture extends EventTarget {
  readonly viewBox = { baseVal: { width: 100, height: 50 } }
  readonly captured: number[] = []
  listeners = 0
  override addEventListener(...args: Parameters<EventTarget['addEventListener']>): void {
    this.listeners += 1
    super.addEventListener(...args)
  }
  getBoundingClientRect(): { left: number; top: number; width: number; height: number } {
    return { left: 0, top: 0, width: 100, height: 50 }
  }
  setPointerCapture(pointer: number): void {
    this.captured.push(pointer)
  }
  hand(type: string, x: number, pointerId = 1, button = 0): void {
    this.dispatchEvent(Object.assign(new Event(type), { clientX: x, clientY: 5, pointerId, button }))
  }
}

/** A picture whose right half can be held, and what was heard of it. */
const made = () => {
  const picture = new Picture()
  const heard: string[] = []
  followDrags(picture as unknown as SVGSVGElement, (x) => {
    if (x < 50) return null
    heard.push(`hold ${x}`)
    return { move: (to) => heard.push(`move ${to}`), end: () => heard.push('end') }
  })
  return { picture, heard }
}

describe('a drag in a picture', () => {
  test.each(['pointerup', 'pointercancel'])('goes from press to %s', (release) => {
    const { picture, heard } = made()
    picture.hand('pointermove', 55)
    picture.hand('pointerdown', 60)
    picture.hand('pointermove', 70)
    picture.hand(release, 70)
    picture.hand('pointermove', 80)
    expect(heard).toEqual(['hold 60', 'move 70', 'end'])
    expect(picture.captured).toEqual([1])
  })

  test('needs something to hold, and the first button', () => {
    const { picture, heard } = made()
    picture.hand('pointerdown', 10)
    picture.hand('pointermove', 60)
    picture.hand('pointerup', 60)
    picture.hand('pointerdown', 60, 1, 2)
    expect(heard).toEqual([])
    expect(picture.captured).toEqual([])
  })

  test('is the first pointer’s alone until it lets go', () => {
    const { picture, heard } = made()
    picture.hand('pointerdown', 60, 1)
    picture.hand('pointerdown', 90, 2)
    picture.hand('pointermove', 95, 2)
    picture.hand('pointerup', 95, 2)
    picture.hand('pointermove', 65, 1)
    picture.hand('pointerup', 65, 1)
    expect(heard).toEqual(['hold 60', 'move 65', 'end'])
  })

  test('leaves no listener behind, however often somebody presses', () => {
    const { picture } = made()
    const before = picture.listeners
    for (let n = 0; n < 20; n++) {
      picture.hand('pointerdown', 60)
      picture.hand('pointerup', 60)
    }
    expect(picture.listeners).toBe(before)
  })
})
