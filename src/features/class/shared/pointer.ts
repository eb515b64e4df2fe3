import { required } from '../../../browser/dom.ts'
import type { ClassStore, PointerPosition } from './state.ts'

/** The box of a picture on the screen, in CSS px, without the empty room beside it. */
const pictureBox = (svg: SVGSVGElement): DOMRect => {
  const box = svg.getBoundingClientRect()
  const { width, height } = svg.viewBox.baseVal
  const scale = Math.min(box.width / width, box.height / height)
  const [wide, high] = [width * scale, height * scale]
  return new DOMRect(box.x + (box.width - wide) / 2, box.y + (box.height - high) / 2, wide, high)
}

/** The middle of the figure: the pointer's position until the mouse moves. */
const middle: PointerPosition = { x: 0.5, y: 0.5 }

/** Makes the pointer: a ring that the whole class sees. Returns a function that shows or hides it. */
export const createPointer = (
  root: HTMLElement,
  store: ClassStore,
  picture: () => SVGSVGElement,
): (() => void) => {
  const ring = required(root, '.class-pointer', HTMLElement)
  let last = middle
  addEventListener('pointermove', ({ clientX, clientY }) => {
    const box = pictureBox(picture())
    last = { x: (clientX - box.x) / box.width, y: (clientY - box.y) / box.height }
    if (store.state().pointer) store.set({ pointer: last }, 'local')
  })
  const render = (): void => {
    const { pointer } = store.state()
    ring.hidden = pointer === undefined
    root.toggleAttribute('data-pointing', pointer !== undefined)
    if (!pointer) return
    const box = pictureBox(picture())
    ring.style.translate = `${box.x + pointer.x * box.width}px ${box.y + pointer.y * box.height}px`
  }
  store.subscribe(render)
  render()
  addEventListener('resize', render)
  return () => {
    store.set({ pointer: store.state().pointer ? undefined : last }, 'local')
  }
}
