import { element, setText } from '../../browser/dom.ts'
import { fileName, saveFile } from '../../browser/save-file.ts'
import { copyText } from '../../browser/share.ts'
import { button, choice, option } from './fields.ts'
import { needleName } from '../../mechanism/bed.ts'
import type { Needle } from '../../mechanism/indices.ts'
import type { Composed } from './composed.ts'
import { createFilmFields } from './film-fields.ts'
import type { Film } from './film/index.ts'
import { createFilming } from './filming.ts'
import type { MachineShown } from './machine-drawing.ts'
import { composedPicture, pictureOf, type PictureOptions, type Seen } from './picture.ts'
import { addressRemark } from './seen.ts'
import styles from './dialog.css?inline'

/** Widths of PNG pictures in pixels: to send, and to print or project. */
const pixels = { small: 1200, large: 2400 } as const

/** The machine of which a film is drawn. */
type Machine = NonNullable<Seen['machine']>

const number = new Intl.NumberFormat('en-GB')

/** Gives the page the dialog's styles, once. */
const dress = (): void => {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(styles)
  document.adoptedStyleSheets.push(sheet)
}

/** Copies words and says so; where the browser does not let the page, they are selected to be copied by hand. */
const copy = (field: HTMLTextAreaElement, say: (words: string) => void): void => {
  copyText(
    field.value,
    () => {
      say('The description is copied.')
    },
    () => {
      field.focus()
      field.select()
      say('The browser does not let this page copy. The description is selected, to be copied by hand.')
    },
  )
}

/** A figure whose flag is on a needle, where it shows the machine in three dimensions; null leaves it where it is. */
const withSubject = (shown: MachineShown, needle: Needle | null): MachineShown =>
  shown.scene && needle !== null
    ? {
        ...shown,
        scene: { ...shown.scene, step: { ...shown.scene.step, subject: `needle.${needleName(needle)}` } },
      }
    : shown

/** The dialog in which a figure is looked at as it will be saved, and saved. */
const createDialog = (): ((seen: Seen) => Promise<void>) => {
  dress()
  let seen: Seen | null = null
  /** Which preview is on its way: an older one that comes later is not shown. */
  let asked = 0

  const kinds = { png: 'Picture (PNG)', svg: 'Drawing (SVG)', film: 'Film' }
  const kind = choice('save-kind', 'File', kinds, 'png')
  const widths = {
    small: `${number.format(pixels.small)} pixels wide, to send`,
    large: `${number.format(pixels.large)}, to print`,
  }
  const size = choice('save-size', 'Size', widths, 'small')
  const film = createFilmFields()
  const isDark = matchMedia('(prefers-color-scheme: dark)').matches
  const scheme = choice('save-scheme', 'Colours', { light: 'Light', dark: 'Dark' }, isDark ? 'dark' : 'light')
  const sentence = option('What happens, in words')
  const address = option('Its address')
  const preview = element('img', { class: 'save-preview', alt: '' })
  const description = element('textarea', { readonly: '', rows: '3', 'aria-label': 'Description' })
  const said = element('p', { class: 'save-said', role: 'status' })
  const remark = element('p', { class: 'save-remark small' })
  const say = (words: string): void => {
    setText(said, words)
  }
  const options = (): PictureOptions => ({
    kind: kind.now() === 'svg' ? 'svg' : 'png',
    pixels: pixels[size.now()],
    scheme: scheme.now(),
    sentence: sentence.input.checked,
    address: address.input.checked,
  })
  /** The film that is chosen; a sentence where there is none. */
  const filmNow = (machine: Machine): Film | string => {
    const stretch = film.now(machine.drawing)
    if (typeof stretch === 'string') return stretch
    if (!seen) return ''
    const { title, description, address: link } = seen
    return {
      shown: withSubject(machine.shown, stretch.needle),
      stretch,
      scheme: scheme.now(),
      title: `${title}. ${stretch.title}`,
      description,
      sentence: sentence.input.checked ? `${title}. ${stretch.title}.` : '',
      address: address.input.checked ? link : '',
    }
  }
  const pictureNow = async ({ machine, ...drawing }: Seen): Promise<Composed | string> => {
    if (kind.now() !== 'film' || !machine) return composedPicture({ ...drawing, machine }, options())
    const chosen = filmNow(machine)
    return typeof chosen === 'string' ? chosen : (await import('./film/index.ts')).stillOf(chosen)
  }
  const show = async (): Promise<void> => {
    if (!seen) return
    const mine = ++asked
    const isFilm = kind.now() === 'film'
    size.root.hidden = kind.now() !== 'png'
    film.root.hidden = !isFilm
    setText(remark, address.input.checked ? (addressRemark(seen) ?? '') : '')
    const picture = await pictureNow(seen)
    if (mine !== asked) return
    save.disabled = typeof picture === 'string'
    if (typeof picture === 'string') {
      say(picture)
      return
    }
    URL.revokeObjectURL(preview.src)
    preview.src = URL.createObjectURL(new Blob([picture.svg], { type: 'image/svg+xml' }))
    preview.style.aspectRatio = `${picture.width} / ${picture.height}`
    if (isFilm && !(await (await import('./film/index.ts')).hasVideo()) && mine === asked)
      say('This browser writes no video here, so the film is a GIF: smaller, and not as smooth.')
  }
  const keep = (file: Blob, name: string): void => {
    saveFile(name, file)
    say(`Saved as ${name}, ${number.format(Math.ceil(file.size / 1000))} kB.`)
  }
  const savePicture = async (now: Seen): Promise<void> => {
    say('Drawing it.')
    try {
      keep(await pictureOf(now, options()), fileName(now.name, 'figure', options().kind))
    } catch {
      say('This browser can’t make a picture of that size. Save the drawing (SVG) instead.')
    }
  }
  const save = button('Save', 'save-now', () => {
    if (!seen) return
    if (kind.now() !== 'film' || !seen.machine) {
      void savePicture(seen)
      return
    }
    const chosen = filmNow(seen.machine)
    if (typeof chosen !== 'string') void filming.save(chosen, seen.machine.drawing.figure.title)
  })
  const filming = createFilming(save, say, keep)
  const dialog = element('dialog', { class: 'page-dialog save-dialog', 'aria-labelledby': 'save-title' }, [
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
      film.root,
      scheme.root,
      element('fieldset', {}, [element('legend', {}, ['Under it']), sentence.root, address.root, remark]),
    ]),
    element('div', { class: 'save-words' }, [
      description,
      button('Copy the description', 'save-copy', () => {
        copy(description, say)
      }),
    ]),
    element('div', { class: 'save-foot' }, [save, filming.progress, filming.cancel, said]),
  ])
  dialog.addEventListener('input', () => {
    filming.giveUp()
    say('')
    void show()
  })
  dialog.addEventListener('close', filming.giveUp)
  document.body.append(dialog)
  return async (now) => {
    seen = now
    say('')
    kind.offer('film', now.machine !== null)
    if (now.machine) film.begin(now.machine.drawing, now.machine.shown.scene?.step.subject)
    preview.alt = now.description
    description.value = now.description
    await show()
    // Opened before its picture is there it would grow, and its buttons would move under a hand.
    await preview.decode().catch(() => undefined)
    if (!dialog.open) dialog.showModal()
  }
}

let open: ((seen: Seen) => Promise<void>) | null = null

/** Opens the dialog that saves what is seen. */
export const openSaving = (seen: Seen): Promise<void> => (open ??= createDialog())(seen)
