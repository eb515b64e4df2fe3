/** A part of subset-font's own interface, which comes without types. */
declare module 'subset-font' {
  export default function subsetFont(
    font: Buffer,
    characters: string,
    options: {
      readonly targetFormat: 'woff2'
      /** The OpenType features to keep, by their tags; all where it is left out. */
      readonly keepFeatures?: readonly string[]
      readonly noHinting?: boolean
    },
  ): Promise<Buffer>
}
