import { namesState } from '../../../browser/names-state.ts'
import { dataOf } from '../../../browser/dom.ts'
import { formerSteps } from '../../../browser/former-steps.ts'
import { yieldToBrowser } from '../../../browser/yield-to-browser.ts'
import { needleName } from '../../../mechanism/bed.ts'
import { type Machine, sayToo, startMachine } from '../../machine/index.ts'
import { readAddress } from './address.ts'
import { bindOwnPlace, machineLink } from './machine-link.ts'
import type { ChapterOutline } from './position.ts'
import { type ClassStore, classStore } from './state.ts'
import { type ClassStep, readStep } from './step.ts'

/** What every window of a class starts with. */
export interface OpenClass {
  readonly machine: Machine
  readonly steps: readonly ClassStep[]
  readonly outline: ChapterOutline
  readonly store: ClassStore
}

/** Starts a page's machine, reads the page's chapter, and from its address where the class is. */
export const openClass = async (root: HTMLElement): Promise<OpenClass> => {
  const hasState = namesState()
  const machine = await startMachine(root)
  await yieldToBrowser()
  const elements = [...root.querySelectorAll<HTMLElement>('.step')]
  const steps = elements.map((element) => readStep(element, machine.store.library))
  const outline = { asks: steps.map(({ asks }) => asks), questions: Number(dataOf(root, 'questions')) }
  const ids = steps.map(({ id }) => id)
  const { trouble, ...place } = readAddress(location.search, ids, formerSteps(elements), outline.questions)
  if (trouble !== null) sayToo(root, trouble)
  const store = classStore({
    chapter: dataOf(root, 'slug'),
    part: 0,
    parts: 1,
    first: needleName(machine.ownPlace.now().columnOne),
    link: hasState ? machineLink(machine) : '',
    blank: false,
    pointer: undefined,
    qr: false,
    ...place,
  })
  bindOwnPlace(machine, store)
  return { machine, steps, outline, store }
}
