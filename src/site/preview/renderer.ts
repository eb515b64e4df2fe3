import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { initWasm, Resvg, type ResvgRenderOptions } from '@resvg/resvg-wasm'
import { root } from 'astro:config/server'
import { encodePng } from './png.ts'

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

/** An SVG as a PNG, in its own size. */
export const pngOf = (svg: string): Promise<Uint8Array<ArrayBuffer>> =>
  withPicture(svg, (picture) => {
    const image = picture.render()
    const png = encodePng({ width: image.width, height: image.height, bytes: image.pixels })
    image.free()
    return png
  })

/** Width in pixels of what an SVG draws; 0 where that is nothing. */
export const widthOf = (svg: string): Promise<number> =>
  withPicture(svg, (picture) => picture.getBBox()?.width ?? 0)
