import { writeCarriagePosition } from '../../link/carriage-position.ts'
import type { CardChoice } from '../../link/state.ts'
import { needleName, passEnds } from '../../mechanism/bed.ts'
import { type Fault, faultId } from '../../mechanism/fault.ts'
import { faultGroups } from '../../words/fault-groups.ts'
import { faultPhrase } from '../../words/faults.ts'
import { describeFrame, wayWord } from '../../words/frame-description.ts'
import { fragmentOf } from '../../browser/address.ts'
import type { Breaker } from './breaker.ts'
import { copyLink } from '../../browser/copy-link.ts'
import { faultsOnCard } from './card-faults.ts'
import { element, required, tell } from '../../browser/dom.ts'
import type { Player } from './play.ts'
import type { Moment, MachineStore } from '../../browser/machine-store.ts'
import { slideTo } from './slide-carriage.ts'

/** How long after the last change a screen reader hears the sentence, in ms. */
const quiet = 700

/** The carriage as a slider: arrows a quarter of a needle, Page keys eight needles, Home and End the bed's ends. */
const bindSlider = (root: HTMLElement, store: MachineStore): void => {
  const slider = required(root, '.carriage-slider', HTMLInputElement)
  const readout = required(root, '.carriage-readout', HTMLElement)
  let isJump = false
  slider.addEventListener('keydown', (event) => {
    isJump = event.key === 'Home' || event.key === 'End'
    if (event.key !== 'PageUp' && event.key !== 'PageDown') return
    event.preventDefault()
    slideTo(store, store.now().state.at + (event.key === 'PageUp' ? 8 : -8))
  })
  slider.addEventListener('input', () => {
    const { state } = store.now()
    const { start } = passEnds(state.pass, state.bed)
    const value = Number(slider.value)
    if (isJump && value === start) store.set({ at: start })
    else slideTo(store, value)
    isJump = false
    show(store.now())
  })
  const show = ({ state, frame }: Moment): void => {
    const { start, end } = passEnds(state.pass, state.bed)
    const [least, most] = [String(Math.min(start, end)), String(Math.max(start, end))]
    if (slider.min !== least) slider.min = least
    if (slider.max !== most) slider.max = most
    slider.value = String(state.at)
    const place = placeWords(frame.x)
    const words = `${place}, moving ${wayWord(frame)}`
    if (readout.textContent === words) return
    tell(readout, words)
    slider.setAttribute('aria-valuetext', `${place}, pass ${state.pass}, moving ${wayWord(frame)}`)
  }
  store.subscribe(show)
}

/** The carriage's place as people say it: by the nearest needle, or beyond the ends. */
const placeWords = (x: number): string => {
  const nearest = Math.round(x)
  if (nearest < 0 || nearest > 199) return writeCarriagePosition(nearest)
  return needleName(nearest)
}

const bindRows = (root: HTMLElement, store: MachineStore): void => {
  const readout = required(root, '.row-readout', HTMLElement)
  const back = required(root, '.row-back', HTMLButtonElement)
  const forward = required(root, '.row-forward', HTMLButtonElement)
  const go = (by: number): void => {
    const { state } = store.now()
    const pass = Math.max(1, state.pass + by)
    store.set({ pass, at: passEnds(pass, state.bed).start })
    // A button that can't be pressed again would drop the keyboard.
    if (back.disabled) forward.focus()
    if (forward.disabled) back.focus()
  }
  back.addEventListener('click', () => {
    go(-1)
  })
  forward.addEventListener('click', () => {
    go(1)
  })
  store.subscribe(({ state, frame }) => {
    back.disabled = state.pass === 1
    forward.disabled = state.pass === 9999
    tell(readout, `Pass ${state.pass}, ${frame.pass.row === null ? 'no card' : `card row ${frame.pass.row}`}`)
  })
}

const bindCards = (root: HTMLElement, store: MachineStore): void => {
  const name = required(root, '.card-readout', HTMLElement)
  const choice = required(root, '.card-choice', HTMLElement)
  const radios = [...choice.querySelectorAll<HTMLInputElement>('input[name="card"]')]
  choice.addEventListener('click', (event) => {
    const isByPointer = event.detail > 0
    if (isByPointer && event.target instanceof HTMLInputElement) choice.hidePopover()
  })
  for (const radio of radios)
    radio.addEventListener('change', () => {
      const card: CardChoice = radio.value === 'none' ? { kind: 'none' } : { kind: 'site', id: radio.value }
      const rows = card.kind === 'site' ? (store.library.cards.get(card.id)?.length ?? 0) : Infinity
      const { faults, said } = faultsOnCard(store.now().state.faults, rows)
      store.set({ card, faults })
      if (said !== '') say(root, said)
    })
  store.subscribe(({ state }, before) => {
    if (before && before.state.card === state.card) return
    const value = state.card.kind === 'site' ? state.card.id : state.card.kind
    for (const radio of radios) radio.checked = radio.value === value
    const chosen = radios.find((radio) => radio.checked)
    name.textContent = state.card.kind === 'own' ? 'a card of its own' : (chosen?.dataset.title ?? '')
  })
}

const bindSpeed = (root: HTMLElement, store: MachineStore, player: Player): void => {
  const speed = required(root, '.speed', HTMLInputElement)
  const readout = required(root, '.speed-readout', HTMLElement)
  speed.addEventListener('input', () => {
    store.set({ speed: Number(speed.value) })
  })
  required(root, '.slowness', HTMLSelectElement).addEventListener('change', (event) => {
    if (event.target instanceof HTMLSelectElement) player.setSlowness(Number(event.target.value))
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.speed === state.speed) return
    speed.value = String(state.speed)
    readout.textContent = `${state.speed} mm/s`
  })
}

/** Says something once, in the line below the figure. */
export const say = (root: HTMLElement, words: string): void => {
  required(root, '.notice', HTMLElement).textContent = words
}

const bindFaults = (root: HTMLElement, store: MachineStore, breaker: Breaker): void => {
  const chips = required(root, '.chips', HTMLElement)
  const mend = required(root, '.mend', HTMLButtonElement)
  required(root, 'button.break', HTMLButtonElement).addEventListener('click', () => {
    breaker.open(null)
  })
  mend.addEventListener('click', () => {
    store.set({ faults: [] })
    say(root, 'Everything is mended.')
    root.querySelector<HTMLElement>('button.break')?.focus()
  })
  root.addEventListener('broken', (event) => {
    if (event instanceof CustomEvent) say(root, String(event.detail))
  })
  store.subscribe(({ state }, before) => {
    if (before && before.state.faults === state.faults) return
    mend.hidden = state.faults.length === 0
    const isNew = (fault: Fault): boolean => before !== null && !before.state.faults.includes(fault)
    const short = state.faults.find((fault) => fault.kind === 'turn.short' && isNew(fault))
    if (short) say(root, `${faultPhrase(short)}: the card keeps its row.`)
    chips.replaceChildren(
      ...faultGroups(state.faults).map(({ phrase, faults }) => {
        const chip = element(
          'button',
          { type: 'button', class: 'chip', 'data-fault': faults.map(faultId).join(' '), title: 'Mend it' },
          [phrase, element('span', { class: 'chip-mend' }, ['mend'])],
        )
        chip.addEventListener('click', () => {
          store.set({ faults: store.now().state.faults.filter((other) => !faults.includes(other)) })
          say(root, `Mended: ${phrase}.`)
          root.querySelector<HTMLElement>('button.break')?.focus()
        })
        return chip
      }),
    )
    if (state.faults.length === 0) chips.replaceChildren(element('span', { class: 'sound' }, ['nothing']))
  })
}

const bindLink = (root: HTMLElement, store: MachineStore): void => {
  const shown = required(root, '.link-text', HTMLInputElement)
  const notice = required(root, '.notice', HTMLElement)
  let said = ''
  const report = (words: string): void => {
    said = words
    say(root, words)
  }
  required(root, '.copy', HTMLButtonElement).addEventListener('click', () => {
    const url = new URL(location.href)
    url.hash = fragmentOf(store.now().state, store.library)
    copyLink(shown, url.href, 'The link to exactly this state is copied.', report)
  })
  // Links that take the state along. Their address is only wanted when somebody goes there.
  for (const link of root.querySelectorAll<HTMLAnchorElement>('a.carry'))
    for (const kind of ['pointerdown', 'focus', 'click'] as const)
      link.addEventListener(kind, () => {
        link.hash = fragmentOf(store.now().state, store.library)
      })
  store.subscribe(() => {
    // Styles that ask what is hidden are worked out anew for each that is set.
    if (!shown.hidden) shown.hidden = true
    // It was true of the state before.
    if (said !== '' && notice.textContent === said) report('')
  })
}

/** The words that came with a link, for whoever opened it. */
const bindNote = (root: HTMLElement, store: MachineStore): void => {
  const note = required(root, '.link-note', HTMLElement)
  store.subscribe(({ state }, before) => {
    if (before && before.state.note === state.note) return
    note.hidden = state.note === ''
    note.textContent = state.note === '' ? '' : `Note with this link: ${state.note}`
  })
}

/** The sentence under the figure, and the same for a screen reader once the carriage has come to rest. */
const bindWords = (root: HTMLElement, store: MachineStore): void => {
  const caption = required(root, '.happening', HTMLElement)
  const spoken = required(root, '.spoken', HTMLElement)
  let timer: ReturnType<typeof setTimeout> | undefined
  store.subscribe(({ frame }, before) => {
    const words = describeFrame(frame)
    tell(caption, words)
    if (!before) return
    clearTimeout(timer)
    timer = setTimeout(() => {
      spoken.textContent = describeFrame(store.now().frame)
    }, quiet)
  })
}

/** Binds every control of the machine's page to the state. */
export const bindControls = (root: HTMLElement, store: MachineStore, player: Player, breaker: Breaker): void => {
  bindSlider(root, store)
  bindRows(root, store)
  bindCards(root, store)
  bindSpeed(root, store, player)
  bindFaults(root, store, breaker)
  bindLink(root, store)
  bindNote(root, store)
  bindWords(root, store)
  required(root, '.play', HTMLButtonElement).addEventListener('click', () => {
    player.toggle()
  })
}
