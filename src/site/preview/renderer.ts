import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { initWasm, Resvg, type ResvgRenderOptions } from '@resvg/resvg-wasm'
import { root } from 'astro:config/server'
import sharp from 'sharp'

// The build puts this code into another folder, so files of packages are looked for from the project's own.
const { resolve } = createRequire(new URL('package.json', root))

const fonts = [
  '@expo-google-fonts/barlow-semi-condensed/500Medium/BarlowSemiCondensed_500Medium.ttf',
  '@expo-google-fonts/barlow-semi-condensed/600SemiBold/BarlowSemiCondensed_600SemiBold.ttf',
  '@expo-google-fonts/source-serif-4/600SemiBold/SourceSerif4_600SemiBold.ttf',
]

const begin = async (): Promise<ResvgRenderOptions> => {
  await initWasm(readFileSync(resolve('@resvg/resvg-wasm/index_bg.wasm')))
  const fontBuffers = fonts.map((font) => readFileSync(resolve(font)))
  return { font: { fontBuffers, defaultFontFamily: 'Barlow Semi Condensed' } }
}

let begun: Promise<ResvgRenderOptions> | undefined

/** The renderer on an SVG, begun once for all pictures. */
const withPicture = async <Result>(
  svg: string,
  use: (picture: InstanceType<typeof Resvg>) => Result,
): Promise<Result> => {
  begun ??= begin()
  const picture = new Resvg(svg, await begun)
  try {
    return use(picture)
  } finally {
    picture.free()
  }
}

/** How many colours a picture has, four bits' worth: enough for the machine's tones and the edges of letters. */
const colours = 16

/** An SVG as a PNG, in its own size. */
export const pngOf = async (svg: string): Promise<Uint8Array<ArrayBuffer>> => {
  const { width, height, pixels } = await withPicture(svg, (picture) => {
    const image = picture.render()
    const drawn = { width: image.width, height: image.height, pixels: Buffer.from(image.pixels) }
    image.free()
    return drawn
  })
  const png = await sharp(pixels, { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .png({ palette: true, colours, dither: 0, effort: 10, compressionLevel: 9 })
    .toBuffer()
  return Uint8Array.from(png)
}

/** Width in pixels of what an SVG draws; 0 where that is nothing. */
export const widthOf = (svg: string): Promise<number> =>
  withPicture(svg, (picture) => picture.getBBox()?.width ?? 0)
