/** A pointer's place in a picture's own pixels. */
export const placeIn = (svg: SVGSVGElement, event: MouseEvent): { x: number; y: number } => {
  const box = svg.getBoundingClientRect()
  const { width, height } = svg.viewBox.baseVal
  const scale = Math.min(box.width / width, box.height / height)
  return {
    x: (event.clientX - box.left - (box.width - width * scale) / 2) / scale,
    y: (event.clientY - box.top - (box.height - height * scale) / 2) / scale,
  }
}

/** A place of the picture in pixels of the page, measured from the left upper corner of the box that holds it. */
export const placeOnPage = (
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
