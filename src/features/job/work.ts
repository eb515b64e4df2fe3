import { element, required, setText } from '../../browser/dom.ts'
import type { Plan } from '../../find/plan.ts'
import { type RepairId, repairIds, repairOfKind } from '../../find/repairs.ts'
import type { Job } from '../../link/job.ts'
import { readSession } from '../../link/session-link.ts'
import { listed } from '../../words/lists.ts'
import { durationWords, partsWords, repairWords, toolWords } from '../../words/repairs.ts'
import { askForLatest } from './latest-answer.ts'
import type { JobClient } from './client.ts'
import { confirmedFaults } from './experience.ts'
import { jobQuery } from './job-query.ts'
import type { Seen } from './look.ts'
import type { Section } from './section.ts'
import { createStep, type StepItem } from './work-step.ts'

const isRepairId = (id: string): id is RepairId => (repairIds as readonly string[]).includes(id)

/** The moment of working: what will be done, in which order, and what was found. Returns what shows it again. */
export const createWork = (section: Section, client: JobClient): ((seen: Seen | null) => void) => {
  const { root, job, library } = section
  const boxes = [...root.querySelectorAll<HTMLInputElement>('.work-choices input')]
  const plan = required(root, '.work-plan', HTMLElement)
  const lead = required(root, '.work-lead', HTMLElement)
  const layOut = required(root, '.work-lay-out', HTMLElement)
  const list = required(root, '.work-steps', HTMLElement)
  const items = new Map<RepairId, StepItem>()
  let now: Seen | null = null
  let shown: Plan | null = null
  // What was noted of work that is ticked off again is there when it is ticked once more.
  const laidAside = new Map<string, Job['repairs'][number]>()
  for (const box of boxes)
    box.addEventListener('change', () => {
      const { repairs } = job.now()
      const own = repairs.find(({ id }) => id === box.value)
      if (own) laidAside.set(own.id, own)
      const others = repairs.filter((one) => one !== own)
      const again = laidAside.get(box.value) ?? { id: box.value, isDone: false, note: '' }
      job.set({ repairs: box.checked ? [...others, again] : others })
    })
  const say = (words: string): void => {
    setText(lead, words)
  }
  const missing = required(root, '.work-missing', HTMLElement)
  // What a hand found may need other work than that during which it was found.
  const showMissing = (ticked: readonly RepairId[]): void => {
    const found = confirmedFaults({ ...job.now(), turnedOut: null }, library)
    const needed = new Set(found.map(({ kind }) => repairOfKind(kind)))
    const others = [...needed].filter((repair) => !ticked.includes(repair))
    missing.hidden = others.length === 0
    missing.replaceChildren(
      ...(others.length === 0 ? [] : ['What was found needs other work, too: ']),
      ...others.map((repair) => {
        const button = element('button', { type: 'button' }, [`Add: ${repairWords[repair]}`])
        button.addEventListener('click', () => {
          job.set({ repairs: [...job.now().repairs, { id: repair, isDone: false, note: '' }] })
        })
        return button
      }),
    )
  }
  const showPlan = (): void => {
    if (!shown) return
    const { steps } = shown
    const answers = now?.answers ?? []
    const made = steps.map((step) => {
      const item = items.get(step.repair) ?? createStep(section, step.repair, say)
      items.set(step.repair, item)
      item.show(step, answers)
      return item.root
    })
    const isSame = made.length === list.children.length && made.every((one, n) => one === list.children[n])
    if (!isSame) list.replaceChildren(...made)
  }
  const showWhole = (found: Plan): void => {
    shown = found
    say(
      `About ${durationWords(found.minutes)} in all. What comes off goes back on before what does not need it off.`,
    )
    const tools = found.tools.map((tool) => toolWords[tool])
    setText(
      layOut,
      `${tools.length === 0 ? 'No tool is needed' : `Lay out ${listed(tools)}`}; ${found.parts.length === 0 ? 'no parts are needed' : `have ${partsWords(found.parts)} at hand`}.`,
    )
    showPlan()
  }
  const askOnce = askForLatest({
    begin: () => {
      say('Working it out …')
    },
    show: showWhole,
    fail: () => {
      say('This browser can’t work out the order of work here.')
    },
  })
  return (seen) => {
    now = seen
    const ticked = job.now().repairs.flatMap(({ id }) => (isRepairId(id) ? [id] : []))
    for (const box of boxes) box.checked = ticked.some((id) => id === box.value)
    plan.hidden = ticked.length === 0
    showMissing(ticked)
    showPlan()
    if (ticked.length === 0) return
    const { id, before, intake } = job.now()
    askOnce([id, before, intake, section.experience(), ticked], () => {
      const { session } = readSession(before, library)
      return client.ask('plan', { query: jobQuery(section, session), ticked })
    })
  }
}
