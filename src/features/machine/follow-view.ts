import { sayToo } from './caption.ts'
import type { FigureView } from './figure-view.ts'

/**
 * Turns the machine in three dimensions to what `first`, the address's `view`, says, where it has one, and from then on to
 * what an edited address says of it; and says what of it could not be read.
 */
export const followView = (root: HTMLElement, stage: FigureView, first: string | null): void => {
  const turn = (text: string | null): void => {
    void stage.follow(text).then((trouble) => {
      if (trouble !== null) sayToo(root, trouble)
    })
  }
  if (first !== null) turn(first)
  stage.seenFrom.listen((text, _, by) => {
    if (by === 'link') turn(text)
  })
}
