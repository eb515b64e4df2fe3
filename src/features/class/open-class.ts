import { breathe } from '../../browser/yield-to-browser.ts'
import { type Machine, startMachine } from '../machine/main.ts'
import { readAddress } from './address.ts'
import type { Lesson } from './class-lesson.ts'
import { linkOf } from './link.ts'
import { type ClassStore, classStore } from './state.ts'
import { type ClassStep, classStep } from './step.ts'

/** What every window of a class begins with. */
export interface Opening {
  readonly machine: Machine
  readonly steps: readonly ClassStep[]
  readonly lesson: Lesson
  readonly store: ClassStore
}

/** Makes a page's machine, and reads its chapter, and from its address where the class is. */
export const openClass = async (root: HTMLElement): Promise<Opening> => {
  const hasState = location.hash.includes('=')
  const machine = await startMachine(root)
  await breathe()
  const steps = [...root.querySelectorAll<HTMLElement>('.step')].map((element) =>
    classStep(element, machine.store.library),
  )
  const lesson = { asks: steps.map(({ asks }) => asks), questions: Number(root.dataset.questions) }
  const ids = steps.map(({ id }) => id)
  const store = classStore({
    chapter: root.dataset.slug ?? '',
    part: 0,
    parts: 1,
    link: hasState ? linkOf(machine) : '',
    blank: false,
    pointer: undefined,
    qr: false,
    ...readAddress(location.search, ids, lesson.questions),
  })
  return { machine, steps, lesson, store }
}
