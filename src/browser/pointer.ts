/** A pointer's position in a picture's own pixels. */
export const positionIn = (svg: SVGSVGElement, event: MouseEvent): { x: number; y: number } => {
  const box = svg.getBoundingClientRect()
  const { width, height } = svg.viewBox.baseVal
  const scale = Math.min(box.width / width, box.height / height)
  return {
    x: (event.clientX - box.left - (box.width - width * scale) / 2) / scale,
    y: (event.clientY - box.top - (box.height - height * scale) / 2) / scale,
  }
}

/** A position in the picture in pixels of the page, measured from the left upper corner of the box that holds it. */
export const positionOnPage = (
  svg: SVGSVGElement,
  x: number,
  y: number,
): { x: number; y: number; scale: number } => {
  const box = svg.getBoundingClientRect()
  const ground = svg.closest('.picture')?.getBoundingClientRect() ?? box
  const { width, height } = svg.viewBox.baseVal
  const scale = Math.min(box.width / width, box.height / height)
  return {
    x: box.left - ground.left + (box.width - width * scale) / 2 + x * scale,
    y: box.top - ground.top + (box.height - height * scale) / 2 + y * scale,
    scale,
  }
}

/** What a hand that holds something in a picture does; positions are in the picture's own pixels. */
export interface Drag {
  readonly move: (x: number, y: number) => void
  readonly end?: () => void
}

/**
 * Follows drags in a picture, from press to release. `takeHold` says what is held where a hand presses, or null where
 * there is nothing to hold; a second pointer takes hold of nothing as long as the first one holds.
 */
export const followDrags = (svg: SVGSVGElement, takeHold: (x: number, y: number) => Drag | null): void => {
  let held: { readonly pointer: number; readonly drag: Drag } | null = null
  svg.addEventListener('pointerdown', (event) => {
    if (held || event.button !== 0) return
    const { x, y } = positionIn(svg, event)
    const drag = takeHold(x, y)
    if (!drag) return
    held = { pointer: event.pointerId, drag }
    svg.setPointerCapture(event.pointerId)
  })
  svg.addEventListener('pointermove', (event) => {
    if (held?.pointer !== event.pointerId) return
    const { x, y } = positionIn(svg, event)
    held.drag.move(x, y)
  })
  for (const release of ['pointerup', 'pointercancel'] as const)
    svg.addEventListener(release, (event) => {
      if (held?.pointer !== event.pointerId) return
      const { drag } = held
      held = null
      drag.end?.()
    })
}
