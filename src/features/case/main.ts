import { at } from '../../mechanism/lookup.ts'
import { type Case, type CaseReading, caseTitle, readCase, writeCase } from '../../link/case.ts'
import type { CardLibrary } from '../../link/state.ts'
import { fragmentOf } from '../../browser/address.ts'
import { sendTitle } from '../../browser/case-title.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { required, dataOf } from '../../browser/dom.ts'
import { libraryOf } from '../../browser/library.ts'
import { type CodeResult, drawCode } from '../../browser/qr-code.ts'
import { bindForm, bindSending } from './form.ts'
import { showNotice } from './write-text.ts'
import { createSheet } from './sheet.ts'

/** How often at most the address is rewritten while a text is typed, in ms. */
const pause = 400

const codeWords: Readonly<Record<CodeResult, string>> = {
  easy: 'Point a phone’s camera at the code to open this page there.',
  dense:
    'Point a phone’s camera at the code to open this page there. The link is long, so the code is fine: hold the phone close and still.',
  'this device':
    'This copy of the site is served on this device only, so the code and the link work here and on no phone.',
  'only here':
    'There is no QR code, because this copy of the site was opened from files: no phone could follow the link.',
  'too long': 'This link is too long for a QR code. Only the link itself opens this page.',
}

/** What can be pressed on the page, with where it leads for the case that is shown. */
const showLinks = (root: HTMLElement, shown: Case, library: CardLibrary): void => {
  const state = fragmentOf(shown.state, library)
  const base = dataOf(root, 'base')
  required(root, '.case-move', HTMLAnchorElement).href = `${base}/#${state}`
  required(root, '.case-back', HTMLAnchorElement).href = `${base}/workbench/#${state}`
  required(root, '.case-change', HTMLAnchorElement).href = `?make#${writeCase(shown, library)}`
}

/** Brings the page of a case to life: a form above it while it is made, and the sheet that the customer sees. */
const startCase = (root: HTMLElement): void => {
  const library = libraryOf(required(root, '.library', HTMLScriptElement).text)
  const isMaking = new URLSearchParams(location.search).has('make')
  const show = createSheet(root, library)
  const code = required(root, '.case-code svg', SVGSVGElement)
  const first = readCase(location.hash, library)
  let current: Case = first

  const link = (): string => `${at(location.href.split(/[?#]/), 0)}#${writeCase(current, library)}`
  const say = (words: string): void => {
    required(root, '.case-said', HTMLElement).textContent = words
  }
  const showCode = (): void => {
    const result = drawCode(code, link())
    const hint =
      isMaking && (result === 'dense' || result === 'too long') ? ' A shorter note makes it shorter.' : ''
    required(root, '.case-code p', HTMLElement).textContent = codeWords[result] + hint
  }
  const render = async (): Promise<void> => {
    showLinks(root, current, library)
    const name = caseTitle(current.title)
    document.title = `${name === '' ? 'A case' : name} · Every Eighth Needle`
    await show({ ...current, title: caseTitle(current.title) })
    await yieldToBrowser()
    showCode()
  }
  let timer: ReturnType<typeof setTimeout> | undefined
  const follow = (): void => {
    timer ??= setTimeout(() => {
      timer = undefined
      history.replaceState(history.state, '', `?make#${writeCase(current, library)}`)
    }, pause)
  }
  const fill = bindForm(root, ({ title, note, done }) => {
    current = { ...current, title, done, state: { ...current.state, note } }
    say('')
    void render()
    follow()
  })
  const open = async (reading: CaseReading): Promise<void> => {
    const { title, state, done, after, left } = reading
    current = { title, state, done, after, left }
    showNotice(root, reading, isMaking)
    fill(current)
    await yieldToBrowser()
    await render()
  }
  const back = required(root, '.case-back', HTMLAnchorElement)
  back.addEventListener('click', () => {
    sendTitle(back.hash, caseTitle(current.title))
  })
  bindSending(root, { link, title: () => caseTitle(current.title), say })
  for (const print of root.querySelectorAll<HTMLButtonElement>('.case-print'))
    print.addEventListener('click', () => {
      window.print()
    })
  addEventListener('hashchange', () => void open(readCase(location.hash, library)))
  void open(first).then(() => {
    root.setAttribute('data-live', '')
  })
}

void yieldToBrowser().then(() => {
  for (const root of document.querySelectorAll<HTMLElement>('.case')) startCase(root)
})
