import { drawCode } from '../case/code.ts'
import { required } from '../machine/dom.ts'

/** Shows the code of an address, with the address in short: without the machine's state, which nobody would type. */
export const showCode = (place: HTMLElement, address: string): void => {
  const result = drawCode(required(place, 'svg', SVGSVGElement), address)
  const { host, pathname, search } = new URL(address)
  required(place, '.class-code-text', HTMLElement).textContent = `${host}${pathname}${search}`
  required(place, '.class-code-long', HTMLElement).hidden = result !== 'too long'
}
