import { fragmentOf } from '../../browser/address.ts'
import { element, required } from '../../browser/dom.ts'
import { frameCode, frameHeight, isEmbedded, writeEmbedQuery } from '../../browser/embed-address.ts'
import { themeOf } from '../../browser/embed-theme.ts'
import type { MachineStore } from '../../browser/machine-store.ts'
import { copyText, onlyHere, shareable } from '../../browser/share.ts'
import { packedAddress } from '../../link/packed-address.ts'
import { writeView } from '../../link/scene-view.ts'
import { base } from '../../link/site-path.ts'
import { say } from './caption.ts'
import type { FigureView } from './figure-view.ts'
import './styles/embed-dialog.css'

/** Width over height of the shown figure’s picture in a shape, as its markup has it. */
const ratioOf = (figure: HTMLElement, id: string, shape: 'wide' | 'narrow'): number => {
  const svg = required(figure, `[data-figure="${id}"] svg[data-layout="${shape}"]`, SVGSVGElement)
  const { width, height } = svg.viewBox.baseVal
  return width / height
}

/** What a frame is called where it can’t be seen: the figure’s title, as its picture has it. */
const titleOf = (figure: HTMLElement, id: string): string =>
  (required(figure, `[data-figure="${id}"] svg`, SVGSVGElement).getAttribute('aria-label') ?? '').replace(
    /^Figure \d+\. |\.$/g,
    '',
  )

/** An address of the site as this page leads there, also where the site is opened from files. */
const asPacked = (address: string): string => {
  const { packBase = '/', packRoot } = document.documentElement.dataset
  return packRoot === undefined ? address : packedAddress(address, packBase, packRoot)
}

const colours = [
  ['', 'as the page round it'],
  ['light', 'light'],
  ['dark', 'dark'],
] as const

/** Shows the code that puts the figure shown, in the state shown, into a page, to be copied. */
export const offerCode = (root: HTMLElement, stage: FigureView, store: MachineStore): void => {
  const id = stage.shown()
  if (!isEmbedded(id)) {
    say(root, 'This figure has no slider of its own, so it can’t be put into another page.')
    return
  }
  const theme = element(
    'select',
    {},
    colours.map(([value, words]) => element('option', { value }, [words])),
  )
  const code = element('textarea', { readonly: '', rows: '5', 'aria-label': 'Code', spellcheck: 'false' })
  const said = element('p', { role: 'status' })
  const copy = element('button', { type: 'button' }, ['Copy the code'])
  const height = frameHeight({
    wide: ratioOf(stage.root, id, 'wide'),
    narrow: ratioOf(stage.root, id, 'narrow'),
  })
  const seen = stage.sceneSeen()
  const view = seen?.view ? `&view=${writeView(seen.view)}` : ''
  const fragment = fragmentOf(store.now().state, store.library) + view
  const scene = seen?.step ?? { subject: stage.root.dataset.subject }
  const address = (): string => {
    const query = writeEmbedQuery({ theme: themeOf(`theme=${theme.value}`), scene })
    return shareable(new URL(asPacked(`${base}/embed/${id}/${query}#${fragment}`), location.href).href)
  }
  const reach = onlyHere(address()) ?? ''
  const report = (words: string): void => {
    said.textContent = [words, reach].filter((part) => part !== '').join(' ')
  }
  const write = (): void => {
    code.value = frameCode(address(), `Every Eighth Needle: ${titleOf(stage.root, id)}`, height)
    report('')
  }
  write()
  theme.addEventListener('change', write)
  copy.addEventListener('click', () => {
    copyText(
      code.value,
      () => {
        report('The code is copied.')
      },
      () => {
        code.select()
        report('The browser does not let this page copy. Here is the code to copy by hand.')
      },
    )
  })
  const dialog = element('dialog', { class: 'page-dialog embed-dialog', 'aria-labelledby': 'embed-title' }, [
    element('h2', { id: 'embed-title' }, ['Put it in your page']),
    element('p', {}, [
      'This figure as it is now, with its slider and its sentence. Paste the code where your page is to have it.',
    ]),
    element('label', {}, ['Colours ', theme]),
    code,
    said,
    element('form', { method: 'dialog' }, [copy, ' ', element('button', {}, ['Close'])]),
  ])
  dialog.addEventListener('close', () => {
    dialog.remove()
  })
  root.append(dialog)
  dialog.showModal()
}
