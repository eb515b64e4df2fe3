import type { Locator } from '@playwright/test'

/** Labels that overlap one another, are cut off at the picture's edge, have letters under 12 px, or hide another flag's foot. */
export const wrongLabels = (picture: Locator): Promise<string[]> =>
  picture.evaluate((svg) => {
    const frame = svg.getBoundingClientRect()
    const labels = [
      ...svg.querySelectorAll('.scene-label, .scene-names text, .scene-flag-words, .scene-measure'),
    ].map((label) => ({
      name: label.textContent,
      box: label.getBoundingClientRect(),
      size: Math.min(
        ...(label instanceof SVGTextElement ? [label] : [...label.querySelectorAll('text')]).map(
          (text) => Number.parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.a ?? 0),
        ),
      ),
    }))
    const hidden = [...svg.querySelectorAll('.scene-flag')].flatMap((flag) => {
      const cloth = flag.querySelector('.scene-cloth')!.getBoundingClientRect()
      return [...svg.querySelectorAll('.scene-foot')]
        .filter((foot) => !flag.contains(foot))
        .map((foot) => foot.getBoundingClientRect())
        .filter(
          (foot) =>
            foot.left < cloth.right &&
            foot.right > cloth.left &&
            foot.top < cloth.bottom &&
            foot.bottom > cloth.top,
        )
        .map(() => `${flag.textContent} hides the foot of another flag`)
    })
    const wrong = labels.flatMap(({ name, box, size }, n) => [
      ...(size < 12 ? [`${name}: ${size.toFixed(1)} px`] : []),
      ...(box.left < frame.left - 0.5 || box.right > frame.right + 0.5
        ? [`${name} is cut off at a side`]
        : []),
      ...(box.top < frame.top - 0.5 || box.bottom > frame.bottom + 0.5
        ? [`${name} is cut off above or below`]
        : []),
      ...labels
        .slice(n + 1)
        .filter(
          (other) =>
            other.box.left < box.right &&
            other.box.right > box.left &&
            other.box.top < box.bottom - 1 &&
            other.box.bottom > box.top + 1,
        )
        .map((other) => `${name} over ${other.name}`),
    ])
    return [...hidden, ...wrong]
  })

/** The share of the machine's room that is not bare paper, of 1. */
export const inkShare = async (place: Locator): Promise<number> => {
  // What stays at the top of the screen while the page scrolls is taken where it is: to scroll to it would move it.
  const [clip, view] = [await place.boundingBox(), place.page().viewportSize()]
  const isInView = clip && view && clip.y >= 0 && clip.y + clip.height <= view.height
  const picture = await (isInView ? place.page().screenshot({ clip }) : place.screenshot())
  return place.page().evaluate(
    async (source) => {
      const image = new Image()
      image.src = source
      await image.decode()
      const canvas = new OffscreenCanvas(image.width, image.height)
      const context = canvas.getContext('2d')
      if (!context) return 0
      context.drawImage(image, 0, 0)
      const { data } = context.getImageData(0, 0, image.width, image.height)
      const [red = 0, green = 0, blue = 0] = data
      const isApart = (value: number, paper: number): boolean => Math.abs(value - paper) > 10
      let inked = 0
      for (let n = 0; n < data.length; n += 4)
        if (isApart(data[n]!, red) || isApart(data[n + 1]!, green) || isApart(data[n + 2]!, blue)) inked++
      return inked / (data.length / 4)
    },
    `data:image/png;base64,${picture.toString('base64')}`,
  )
}
