import { element, tell } from '../../browser/dom.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import { button, choice, option } from './fields.ts'
import { composedPicture, pictureOf, type PictureOptions, type Seen } from './picture.ts'
import { addressRemark } from './seen.ts'
import styles from './dialog.css?inline'

/** Widths of PNG pictures in pixels: to send, and to print or project. */
const pixels = { small: 1200, large: 2400 } as const

const number = new Intl.NumberFormat('en-GB')

/** Gives the page the dialog's styles, once. */
const dress = (): void => {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(styles)
  document.adoptedStyleSheets.push(sheet)
}

/** Copies words and says so; where the browser does not let the page, they are selected to be copied by hand. */
const copy = async (field: HTMLTextAreaElement, say: (words: string) => void): Promise<void> => {
  try {
    await navigator.clipboard.writeText(field.value)
    say('The description is copied.')
  } catch {
    field.focus()
    field.select()
    say('The browser does not let this page copy. The description is selected, to be copied by hand.')
  }
}

/** The dialog in which a figure is looked at as it will be saved, and saved. */
const createDialog = (): ((seen: Seen) => Promise<void>) => {
  dress()
  let seen: Seen | null = null
  /** Which preview is on its way: an older one that comes later is not shown. */
  let asked = 0

  const kind = choice('save-kind', 'File', { png: 'Picture (PNG)', svg: 'Drawing (SVG)' }, 'png')
  const widths = {
    small: `${number.format(pixels.small)} pixels wide, to send`,
    large: `${number.format(pixels.large)}, to print`,
  }
  const size = choice('save-size', 'Size', widths, 'small')
  const isDark = matchMedia('(prefers-color-scheme: dark)').matches
  const scheme = choice('save-scheme', 'Colours', { light: 'Light', dark: 'Dark' }, isDark ? 'dark' : 'light')
  const sentence = option('What happens, in words')
  const address = option('Its address')
  const preview = element('img', { class: 'save-preview', alt: '' })
  const description = element('textarea', { readonly: '', rows: '3', 'aria-label': 'Description' })
  const said = element('p', { class: 'save-said', role: 'status' })
  const remark = element('p', { class: 'save-remark small' })
  const say = (words: string): void => {
    tell(said, words)
  }
  const options = (): PictureOptions => ({
    kind: kind.now(),
    pixels: pixels[size.now()],
    scheme: scheme.now(),
    sentence: sentence.input.checked,
    address: address.input.checked,
  })
  const show = async (): Promise<void> => {
    if (!seen) return
    const mine = ++asked
    size.root.hidden = kind.now() === 'svg'
    tell(remark, address.input.checked ? (addressRemark(seen) ?? '') : '')
    const { svg, width, height } = await composedPicture(seen, options())
    if (mine !== asked) return
    URL.revokeObjectURL(preview.src)
    preview.src = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }))
    preview.style.aspectRatio = `${width} / ${height}`
  }
  const save = async (): Promise<void> => {
    if (!seen) return
    say('Drawing it.')
    try {
      const file = await pictureOf(seen, options())
      const name = fileName(seen.name, 'figure', kind.now())
      saveFile(name, file)
      say(`Saved as ${name}, ${number.format(Math.ceil(file.size / 1000))} kB.`)
    } catch {
      say('This browser can’t make a picture of that size. Save the drawing (SVG) instead.')
    }
  }
  const dialog = element('dialog', { class: 'save-dialog', 'aria-labelledby': 'save-title' }, [
    element('div', { class: 'save-head' }, [
      element('h2', { id: 'save-title' }, ['Save this figure']),
      button('Close', 'save-close', () => {
        dialog.close()
      }),
    ]),
    preview,
    element('div', { class: 'save-choices' }, [
      kind.root,
      size.root,
      scheme.root,
      element('fieldset', {}, [element('legend', {}, ['Under it']), sentence.root, address.root, remark]),
    ]),
    element('div', { class: 'save-words' }, [
      description,
      button('Copy the description', 'save-copy', () => void copy(description, say)),
    ]),
    element('div', { class: 'save-foot' }, [button('Save', 'save-now', () => void save()), said]),
  ])
  dialog.addEventListener('input', () => {
    say('')
    void show()
  })
  document.body.append(dialog)
  return async (now) => {
    seen = now
    say('')
    preview.alt = now.description
    description.value = now.description
    dialog.showModal()
    await show()
  }
}

let open: ((seen: Seen) => Promise<void>) | null = null

/** Opens the dialog that saves what is seen. */
export const openSaving = (seen: Seen): Promise<void> => (open ??= createDialog())(seen)
