import { element, required, setText } from '../../browser/dom.ts'
import type { Decision, WayToGo } from '../../find/decide.ts'
import { partIds, repairIds } from '../../find/repairs.ts'
import { readSession } from '../../link/session-link.ts'
import { quote } from '../../link/troubles.ts'
import { percent } from '../../words/finding.ts'
import { lower } from '../../words/parts.ts'
import {
  durationWords,
  openingsWords,
  namedPlaces,
  partsWords,
  placesWords,
  repairWords,
  servingWords,
} from '../../words/repairs.ts'
import { jobQuery } from './job-query.ts'
import { askForLatest } from './latest-answer.ts'
import type { JobClient } from './client.ts'
import { keepPrices, loadPrices, readPrice } from './prices.ts'
import type { Section } from './section.ts'

/** Ways to go that are shown; those after them are worse for the time. */
const mostWays = 8

/** At most so many places that stay unknown are named. */
const mostNamed = 6

const titleOf = ({ works }: WayToGo): string =>
  works
    .map(({ repair, places }, n) => {
      const words = n === 0 ? repairWords[repair] : lower(repairWords[repair])
      const named = namedPlaces(places)
      return named === '' ? words : `${words} (${named})`
    })
    .join('; ')

const unknownWords = ({ unknown }: WayToGo): string => {
  if (unknown.length === 0) return 'Nothing else is in doubt.'
  const more = unknown.length - mostNamed
  return `Still unknown: ${placesWords(unknown.slice(0, mostNamed))}${more > 0 ? `, and ${more} more` : ''}.`
}

/** The fields of what it costs; `changed` is called where a price has changed. */
const bindPrices = ({ root }: Section, changed: () => void): void => {
  const said = required(root, '.decide-prices-said', HTMLElement)
  const prices = loadPrices()
  for (const field of root.querySelectorAll<HTMLInputElement>('[data-price]')) {
    const name = field.dataset['price']
    const part = partIds.find((known) => known === name)
    const kept = part === undefined ? prices?.hour : prices?.parts[part]
    field.value = kept ? String(kept) : ''
    field.addEventListener('change', () => {
      const price = readPrice(field.value)
      if (price === null) {
        setText(said, `${quote(field.value)} is no price such as 12 or 4.50, so it is left out.`)
        return
      }
      const now = loadPrices() ?? { hour: 0, parts: {} }
      const isKept = keepPrices(
        part === undefined ? { ...now, hour: price } : { ...now, parts: { ...now.parts, [part]: price } },
      )
      setText(said, isKept ? '' : 'This browser does not keep prices, so they are left out.')
      changed()
    })
  }
}

/** The moment of deciding: what may be done, and what would come of it. Returns what shows it again. */
export const createDecide = (section: Section, client: JobClient): (() => void) => {
  const { root, job, library } = section
  const now = required(root, '.decide-now', HTMLElement)
  const list = required(root, '.decide-ways', HTMLElement)
  const chanceOfPlain = required(root, '.decide-plain b', HTMLElement)
  const forParts = required(root, '.decide-for-parts', HTMLButtonElement)
  const choose = ({ works }: WayToGo): void => {
    const chosen = new Set<string>(works.map(({ repair }) => repair))
    const kept = job.now().repairs.filter(({ id, isDone, note }) => isDone || note !== '' || chosen.has(id))
    const added = repairIds.filter((id) => chosen.has(id) && !kept.some((one) => one.id === id))
    job.set({ repairs: [...kept, ...added.map((id) => ({ id, isDone: false, note: '' }))] })
  }
  const itemOf = (way: WayToGo): HTMLElement => {
    const button = element('button', { type: 'button' }, ['Plan this'])
    button.setAttribute('aria-label', `Plan this: ${titleOf(way)}`)
    button.addEventListener('click', () => {
      choose(way)
      location.hash = `#${job.now().id}.work`
    })
    const cost = way.cost === null || way.cost === 0 ? '' : `; costs ${way.cost.toFixed(2)}`
    return element('li', {}, [
      element('h3', {}, [titleOf(way)]),
      element('p', { class: 'decide-chance' }, [
        element('b', {}, [percent(way.chance)]),
        ' that the pattern then comes out whole',
      ]),
      element('p', {}, [
        `About ${durationWords(way.minutes)}; ${openingsWords(way.opens)}; ${partsWords(way.parts)}${cost}.`,
      ]),
      element('p', { class: 'small' }, [unknownWords(way)]),
      button,
    ])
  }
  forParts.addEventListener('click', () => {
    job.set({ state: 'for-parts' })
  })
  const show = ({ now: asItIs, ways, plain: knitsPlain, serves }: Decision): void => {
    setText(
      now,
      ways.length === 0
        ? 'Nothing that was seen speaks for any work.'
        : `As it is, the pattern comes out whole with a chance of ${percent(asItIs)}.`,
    )
    list.replaceChildren(...ways.slice(0, mostWays).map(itemOf))
    setText(chanceOfPlain, percent(knitsPlain))
    setText(required(root, '.decide-serves', HTMLElement), servingWords(serves))
    list.removeAttribute('aria-busy')
  }
  const askOnce = askForLatest<Decision>({
    begin: () => {
      setText(now, 'Working it out …')
      list.setAttribute('aria-busy', 'true')
    },
    show,
    fail: () => {
      setText(now, 'This browser can’t work out here what may be done.')
    },
  })
  const update = (): void => {
    const { before } = job.now()
    const prices = loadPrices()
    forParts.disabled = job.now().state === 'for-parts'
    askOnce([job.now().id, before, job.now().intake, prices, section.experience()], () => {
      const { session } = readSession(before, library)
      return client.ask('decide', { query: jobQuery(section, session), prices })
    })
  }
  bindPrices(section, update)
  return update
}
