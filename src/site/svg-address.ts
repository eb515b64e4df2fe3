/** A drawing as an address that has all of it: whoever has the page has the picture, without another request. */
export const svgAddress = (svg: string): string =>
  `data:image/svg+xml,${svg.replace(/[%#<>"\n\r\t]/g, encodeURIComponent)}`
