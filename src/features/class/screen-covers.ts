import { at } from '../../mechanism/lookup.ts'
import { dataOf, required } from '../../browser/dom.ts'
import { shareable } from '../../browser/share.ts'
import type { ClassView } from './context.ts'
import { machineLink } from './shared/machine-link.ts'

/**
 * The address of what is on the screen, for the learners' own: the chapter's page at the step, with the machine as it is
 * now; or the question of the class quiz, which only the class view has.
 */
const followAlong = ({ root, machine, store, steps }: ClassView): string => {
  const { step, quiz } = store.state()
  const url = new URL(quiz ? location.href : dataOf(root, 'chapterAddress'), location.href)
  if (quiz) url.searchParams.delete('class')
  else url.searchParams.set('step', at(steps, step).id)
  url.hash = machineLink(machine)
  return url.href
}

/**
 * Shows the code of an address, with the address in short: without the machine's state, which nobody would type.
 */
const showCode = async (place: HTMLElement, address: string): Promise<void> => {
  const { drawCode } = await import('../../browser/qr-code.ts')
  const shared = shareable(address)
  const result = drawCode(required(place, 'svg', SVGSVGElement), shared)
  const { host, pathname, search } = new URL(shared)
  required(place, '.class-code-text', HTMLElement).textContent =
    result === 'only here'
      ? 'This copy was opened from files, so no phone can follow it.'
      : `${host}${pathname}${search}`
  required(place, '.class-code-long', HTMLElement).hidden = result !== 'too long'
  required(place, '.class-code-here', HTMLElement).hidden = result !== 'this device'
}

/** Covers the screen where the class's state says so: with nothing, or with the code by which a class follows along. */
export const bindScreenCovers = (view: ClassView): void => {
  const { root, store } = view
  const code = required(root, '.class-code', HTMLElement)
  const blank = required(root, '.class-blank', HTMLElement)
  store.subscribe(({ blank: isBlank, qr }) => {
    blank.hidden = !isBlank
    code.hidden = !qr
    if (qr) void showCode(code, followAlong(view))
  })
}
