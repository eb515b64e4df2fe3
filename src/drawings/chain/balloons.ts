import { change, type Group, parts, px } from '../shared/svg.ts'

/** A numbered balloon: a part keeps its number through the whole site. */
export interface Balloon {
  readonly number: number
  readonly x: number
  readonly y: number
}

/** Draws a group's balloons. */
export const drawBalloons = (group: Group, all: readonly Balloon[]): void => {
  const balloons = parts(group, 'g', 'balloon', all)
  balloons.each(function ({ number }) {
    if (this.firstChild) return
    const make = (tag: string, name: string, value: string): Element => {
      const element = this.ownerDocument.createElementNS('http://www.w3.org/2000/svg', tag)
      element.setAttribute(name, value)
      return this.appendChild(element)
    }
    make('circle', 'r', '9.5')
    make('text', 'y', '4.2').textContent = String(number)
  })
  change(balloons, 'transform', ({ x, y }) => `translate(${px(x)} ${px(y)})`)
}
