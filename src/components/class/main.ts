import { read } from '../../link/read.ts'
import { fragmentOf } from '../machine/address.ts'
import { say } from '../machine/controls.ts'
import { required } from '../machine/dom.ts'
import { startMachine } from '../machine/main.ts'
import { channelTrouble, joinClass } from '../speaker/channel.ts'
import { openSpeaker } from '../speaker/open.ts'
import { readAddress, writeAddress } from './address.ts'
import { layOut, type Laid } from './fit.ts'
import { showCode } from './follow.ts'
import { type Command, commandOf, hasOwnKeys } from './keys.ts'
import { createPointer } from './pointer.ts'
import { keepAwake, toggleFullScreen } from './screen.ts'
import { type ClassState, classStore, newSession, sessionOf } from './state.ts'
import { classStep, type Scene } from './step.ts'
import { createTravel } from './travel.ts'
import { back, forward, type Lesson, reveal, toQuestion, toStep } from './walk.ts'

/** Seeds of class quizzes run from 1 to this. */
const seeds = 999

const newSeed = (): number => 1 + Math.floor(Math.random() * seeds)

/** The class's id, kept in the address so that a reload and another window find it. */
const session = (): string => {
  const id = sessionOf(location.search)
  if (id !== undefined) return id
  const made = newSession()
  const url = new URL(location.href)
  url.searchParams.set('class', made)
  history.replaceState(history.state, '', url)
  return made
}

/** Whether two states show the same text: the same step or question, before or after its answer. */
const samePlace = (one: ClassState, other: ClassState): boolean =>
  one.step === other.step &&
  one.revealed === other.revealed &&
  one.quiz?.seed === other.quiz?.seed &&
  one.quiz?.question === other.quiz?.question

/** Brings a class view to life. */
const startClass = (root: HTMLElement): void => {
  const hadState = location.hash.includes('=')
  const id = session()
  const machine = startMachine(root)
  const { library } = machine.store
  const travel = createTravel(machine.store)
  const steps = [...root.querySelectorAll<HTMLElement>('.step')].map((element) => classStep(element, library))
  const ids = steps.map(({ id }) => id)
  const questions = Number(root.dataset.questions)
  const chapter = Number(root.dataset.chapter)
  const lesson: Lesson = { asks: steps.map(({ asks }) => asks), questions }
  const linkNow = (): string => fragmentOf(machine.store.now().state, library)
  const store = classStore({
    chapter: root.dataset.slug ?? '',
    part: 0,
    parts: 1,
    link: hadState ? linkNow() : '',
    blank: false,
    pointer: undefined,
    qr: false,
    ...readAddress(location.search, ids, questions),
  })
  const body = required(root, '.class-body', HTMLElement)
  const asked = required(body, '.class-question', HTMLElement)
  const place = required(root, '.class-place', HTMLElement)
  const said = required(root, '.class-said', HTMLElement)
  const code = required(root, '.class-code', HTMLElement)
  const blank = required(root, '.class-blank', HTMLElement)
  const help = required(root, '.class-help', HTMLDialogElement)
  const panel = required(root, '.class-machine', HTMLElement)
  const tell = (words: string): void => {
    said.textContent = words
  }

  /** What is on the screen, and its text as it is laid out there. */
  let scene: Scene | undefined
  let laid: Laid | undefined
  let isFollowing = false

  const showPart = (): void => {
    if (!laid) return
    const { step, part, quiz } = store.state()
    const shown = Math.min(part, laid.parts - 1)
    laid.show(shown)
    const what = quiz
      ? `Question ${quiz.question + 1} of ${questions}`
      : `Step ${step + 1} of ${steps.length}`
    place.textContent = laid.parts > 1 ? `${what}, part ${shown + 1} of ${laid.parts}` : what
    // The part stays as it was asked for: another window's screen may have room for fewer or more.
    store.set({ parts: laid.parts }, 'here')
  }
  const lay = (): void => {
    if (!scene) return
    laid = layOut(body, scene.pieces, scene.holders)
    showPart()
  }
  const sceneOf = async ({ step, quiz, revealed }: ClassState): Promise<Scene | undefined> => {
    if (!quiz) return steps[step]?.scene(revealed)
    const { quizScene } = await import('./quiz.ts')
    return quizScene(asked, chapter, quiz, library, revealed)
  }
  const enter = async (state: ClassState): Promise<void> => {
    const found = await sceneOf(state)
    // A faster hand has gone on meanwhile.
    if (!found || !samePlace(state, store.state())) return
    scene = found
    machine.player.stop()
    say(root, '')
    for (const [n, { element }] of steps.entries())
      element.toggleAttribute('data-current', n === state.step && !state.quiz)
    asked.hidden = state.quiz === undefined
    root.toggleAttribute('data-quiz', state.quiz !== undefined)
    root.toggleAttribute(
      'data-waits',
      !state.revealed && (state.quiz !== undefined || lesson.asks[state.step] === true),
    )
    machine.stage.show(found.figure)
    const { link } = store.state()
    if (link === '') travel.go(found.state, found.to)
    else isFollowing = true
    if (link !== '') machine.store.set(read(link, library).state)
    isFollowing = false
    lay()
  }
  const keepAddress = (state: ClassState): void => {
    history.replaceState(history.state, '', writeAddress(location.href, state, ids))
  }
  const followAlong = (): string => {
    const { step } = store.state()
    const url = new URL(root.dataset.chapterAddress ?? '', location.href)
    url.searchParams.set('step', ids[step] ?? '')
    url.hash = linkNow()
    return url.href
  }
  const showCover = ({ blank: isBlank, qr }: ClassState): void => {
    blank.hidden = !isBlank
    code.hidden = !qr
    if (qr) showCode(code, followAlong())
  }

  machine.store.subscribe((_, before) => {
    if (before && !isFollowing) store.set({ link: linkNow() }, 'here')
  })
  let last = store.state()
  store.subscribe((state, from) => {
    const before = last
    last = state
    if (state.chapter !== before.chapter) {
      location.assign(new URL(`../${state.chapter}/${location.search}`, location.href))
      return
    }
    showCover(state)
    if (!samePlace(state, before)) {
      keepAddress(state)
      void enter(state)
      return
    }
    if (state.part !== before.part) showPart()
    if (from === 'there' && state.link !== before.link && state.link !== '') {
      isFollowing = true
      travel.follow(read(state.link, library).state)
      isFollowing = false
    }
  })

  const movePointer = createPointer(root, store, machine.stage.svg)
  const openHelp = (): void => {
    if (help.open) help.close()
    else help.showModal()
  }
  const openMachine = (): void => {
    panel.hidden = !panel.hidden
  }
  /** Uncovers the screen where something covers it; a key that goes on does no more then. */
  const uncover = (): boolean => {
    const { blank: isBlank, qr } = store.state()
    if (!isBlank && !qr) return false
    store.set({ blank: false, qr: false }, 'here')
    return true
  }
  const move = (to: Partial<ClassState> | undefined, none: string): void => {
    if (uncover()) return
    if (to) store.set(to, 'here')
    else tell(none)
  }
  /** The class's state, with as many parts as there are on this screen. */
  const here = (): ClassState => ({ ...store.state(), parts: laid?.parts ?? 1 })
  const obey: Readonly<Record<Command, () => void>> = {
    forward: () => {
      move(forward(here(), lesson, newSeed()), 'This is the end of the chapter.')
    },
    back: () => {
      move(back(here(), lesson), 'This is the beginning of the chapter.')
    },
    first: () => {
      move(toStep(store.state(), lesson, 0), '')
    },
    last: () => {
      move(toStep(store.state(), lesson, steps.length - 1), '')
    },
    reveal: () => {
      move(reveal(store.state(), lesson), 'Nothing is hidden here.')
    },
    blank: () => {
      store.set({ blank: !store.state().blank }, 'here')
    },
    code: () => {
      store.set({ qr: !store.state().qr }, 'here')
    },
    pointer: movePointer,
    machine: openMachine,
    speaker: () => {
      const isOpen = openSpeaker(id, store.state().chapter)
      if (!isOpen) tell('The browser did not let the speaker’s window open.')
      else tell(channelTrouble() ?? '')
    },
    full: () => {
      toggleFullScreen(tell)
    },
    help: openHelp,
  }
  const order = (command: Command): void => {
    tell('')
    travel.stop()
    obey[command]()
  }
  document.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && document.activeElement instanceof HTMLElement) document.activeElement.blur()
    const command = commandOf(event)
    const isAgain = command === 'help' && help.open
    if (!command || event.defaultPrevented || (hasOwnKeys(event.target) && !isAgain)) return
    event.preventDefault()
    order(command)
  })
  root.addEventListener('click', (event) => {
    const target = event.target instanceof Element ? event.target : null
    const command = target?.closest<HTMLElement>('[data-command]')?.dataset.command
    if (command) {
      if (help.open) help.close()
      order(command as Command)
    }
    const link = target?.closest<HTMLElement>('[data-go]')
    if (link) {
      event.preventDefault()
      travel.stop()
      if (link.dataset.goFigure) machine.stage.show(link.dataset.goFigure)
      machine.store.set(read(link.dataset.go ?? '', library).state)
    }
    if (target?.closest('.class-to-quiz')) {
      event.preventDefault()
      help.close()
      store.set(toQuestion(store.state(), newSeed(), 0), 'here')
    }
  })
  // A mouse leaves the keys to the class: only the keyboard keeps a control in hand.
  root.addEventListener('pointerup', () => {
    const held = document.activeElement
    if (
      held instanceof HTMLElement &&
      held.matches('button, a, summary, input[type="range"], input[type="radio"]')
    )
      if (!held.closest('dialog, [popover]')) held.blur()
  })
  for (const form of root.querySelectorAll<HTMLFormElement>('.predict'))
    form.addEventListener('change', () => {
      order('reveal')
    })
  required(root, '.class-step-again', HTMLButtonElement).addEventListener('click', () => {
    if (scene) travel.go(scene.state, scene.to)
  })
  addEventListener('resize', lay)
  void document.fonts.ready.then(lay)
  keepAwake((isAwake) => {
    required(root, '.class-awake', HTMLElement).textContent = isAwake
      ? 'The screen stays on while this page is seen.'
      : 'This browser can’t keep the screen on: set the computer not to sleep.'
  })
  keepAddress(store.state())
  void enter(store.state())
  joinClass(store, id)
  document.documentElement.setAttribute('data-class', '')
}

for (const root of document.querySelectorAll<HTMLElement>('.class-view')) startClass(root)
