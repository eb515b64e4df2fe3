import { element, required, tell } from '../../browser/dom.ts'
import type { Answer } from '../../find/messages.ts'
import type { CheckId } from '../../find/checks.ts'
import { type Place, placeOfFault } from '../../find/place.ts'
import type { Plan, PlanStep } from '../../find/plan.ts'
import { type RepairId, repairIds } from '../../find/repairs.ts'
import { type Job, jobLimits } from '../../link/job.ts'
import { readSession, writeSession } from '../../link/session-link.ts'
import type { Fault } from '../../mechanism/fault.ts'
import { faultPhrase } from '../../words/faults.ts'
import { percent } from '../../words/finding.ts'
import { listed } from '../../words/lists.ts'
import {
  durationWords,
  openingsWords,
  partsWords,
  placesWords,
  repairWords,
  toolWords,
} from '../../words/repairs.ts'
import { createAsker } from './asker.ts'
import type { JobClient } from './client.ts'
import { jobQuery } from './job-query.ts'
import type { Seen } from './look.ts'
import type { Section } from './section.ts'

/** The check that is made by the way when a place is worked on: what was found there is noted as its outcome. */
const checkOfRepair: Readonly<Record<RepairId, CheckId>> = {
  settings: 'settings',
  card: 'card',
  retainer: 'retainer',
  needles: 'swap-needle',
  belt: 'belt',
  carriage: 'carriage',
  strips: 'strips',
  catches: 'cover',
  turn: 'stepping',
  reader: 'reader',
}

const isRepairId = (id: string): id is RepairId => (repairIds as readonly string[]).includes(id)

/** The faults that may be at these places, the likeliest first: what a hand may find there. */
const faultsAt = (answers: readonly Answer[], places: readonly Place[]): Fault[] =>
  answers.flatMap(({ ways }) =>
    ways.flatMap((way) => way.filter((fault) => places.includes(placeOfFault(fault)))).slice(0, 3),
  )

/** Notes what a hand found at a repair, so that the search for faults knows it. */
const noteFound = ({ job, library }: Section, repair: RepairId, found: Fault | null): void => {
  const { session } = readSession(job.now().before, library)
  const checked = [...session.checked, { check: checkOfRepair[repair], found }]
  job.set({ before: writeSession({ ...session, checked }, library) })
}

const changeRepair = ({ job }: Section, id: RepairId, change: { isDone?: boolean; note?: string }): void => {
  job.set({ repairs: job.now().repairs.map((one) => (one.id === id ? { ...one, ...change } : one)) })
}

/** One step of the order of work; it stays while the plan changes, so that what is typed is not lost. */
interface StepItem {
  readonly root: HTMLElement
  readonly show: (step: PlanStep, answers: readonly Answer[]) => void
}

const createStep = (section: Section, repair: RepairId, said: (words: string) => void): StepItem => {
  const { root: page, job } = section
  const done = element('input', { type: 'checkbox' })
  const words = element('span')
  const opens = element('p', { class: 'small' })
  const cautions = element('div')
  const also = element('p', { class: 'small' })
  const found = element('div', { class: 'job-choices' })
  const note = element('textarea', { rows: '2', maxlength: String(jobLimits.note) })
  note.setAttribute('aria-label', `What was done: ${repairWords[repair]}`)
  note.placeholder = 'What was done, for the owner’s sheet'
  done.addEventListener('change', () => {
    changeRepair(section, repair, { isDone: done.checked })
  })
  note.addEventListener('input', () => {
    changeRepair(section, repair, { note: note.value })
  })
  const foundButton = (label: string, fault: Fault | null): HTMLElement => {
    const button = element('button', { type: 'button' }, [label])
    button.addEventListener('click', () => {
      noteFound(section, repair, fault)
      said(`Noted: ${fault ? faultPhrase(fault) : 'all sound there'}. What it may be has changed with it.`)
    })
    return button
  }
  const root = element('li', {}, [
    element('label', { class: 'work-done' }, [done, words]),
    opens,
    cautions,
    also,
    element('p', { class: 'small' }, ['What did you find there?']),
    found,
    note,
  ])
  return {
    root,
    show: (step, answers) => {
      const kept = job.now().repairs.find(({ id }) => id === repair)
      done.checked = kept?.isDone ?? false
      if (kept && note.value !== kept.note) note.value = kept.note
      const where = step.places.length > 0 ? `: ${placesWords(step.places)}` : ''
      tell(words, `${repairWords[repair]}${where}`)
      const first = step.opens.length > 0 ? `First ${openingsWords(step.opens)}. ` : ''
      tell(opens, `${first}About ${durationWords(step.minutes)} of work.`)
      cautions.replaceChildren(
        ...step.cautions.flatMap((id) => {
          const caution = page.querySelector(`.work-cautions [data-caution="${CSS.escape(id)}"]`)
          return caution ? [caution.cloneNode(true)] : []
        }),
      )
      tell(
        also,
        step.also.length === 0
          ? ''
          : `While this is open, look also at ${listed(step.also.map(({ place, chance }) => `${placesWords([place])} (${percent(chance)})`))}.`,
      )
      found.replaceChildren(
        ...faultsAt(answers, step.places).map((fault) => foundButton(faultPhrase(fault), fault)),
        foundButton('All sound there', null),
      )
    },
  }
}

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
    tell(lead, words)
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
    tell(
      layOut,
      `${tools.length === 0 ? 'No tool is needed' : `Lay out ${listed(tools)}`}; ${found.parts.length === 0 ? 'no parts are needed' : `have ${partsWords(found.parts)} at hand`}.`,
    )
    showPlan()
  }
  const askOnce = createAsker({
    begin: () => {
      say('Being worked out …')
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
    showPlan()
    if (ticked.length === 0) return
    const { id, before, intake } = job.now()
    askOnce([id, before, intake, section.experience(), ticked], () => {
      const { session } = readSession(before, library)
      return client.ask('plan', { query: jobQuery(section, session), ticked })
    })
  }
}
