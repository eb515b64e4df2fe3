import { strToU8, type Zippable, zipSync } from 'fflate'
import { fileName } from '../../browser/save-file.ts'
import { yieldToBrowser } from '../../browser/yield-to-browser.ts'
import { read } from '../../link/read.ts'
import type { CardLibrary } from '../../link/state.ts'
import { pictureOf, seeMachine } from '../picture/index.ts'
import { notesText, slideNumber, type SlideStep } from './steps.ts'

/** How wide a slide's picture is, in pixels: as wide as most projectors. */
const width = 1920

/** What slides are made of. */
interface Slides {
  readonly title: string
  readonly steps: readonly SlideStep[]
  readonly library: CardLibrary
}

/**
 * A chapter's steps as pictures in their order, with their notes as a text, in one zip file. `progress` hears how many are
 * drawn. Throws where the signal is given meanwhile, or the browser draws on no canvas of that size.
 */
export const zipOfSlides = async (
  { title, steps, library }: Slides,
  signal: AbortSignal,
  progress: (drawn: number) => void,
): Promise<Blob> => {
  const files: Zippable = {}
  for (const [n, { title: name, figure, state, scene }] of steps.entries()) {
    const seen = await seeMachine({
      figure,
      shape: 'wide',
      scene: figure === 'scene' ? { step: scene, view: null, lit: null } : null,
      state: read(state, library).state,
      library,
    })
    const options = { kind: 'png', pixels: width, scheme: 'light', sentence: true, address: false } as const
    const picture = await pictureOf(seen, options)
    // A picture is compressed already.
    files[`${slideNumber(n)}-${fileName(name, 'step', 'png')}`] = [
      new Uint8Array(await picture.arrayBuffer()),
      { level: 0 },
    ]
    progress(n + 1)
    await yieldToBrowser()
    signal.throwIfAborted()
  }
  files['notes.txt'] = strToU8(notesText(title, steps))
  return new Blob([zipSync(files)], { type: 'application/zip' })
}
