/** Whether the fragment names an exact state: the needle of column 1 alone says only whose machine it is. */
export const namesState = (): boolean =>
  [...new URLSearchParams(location.hash.slice(1))].some(([key, value]) => key !== 'first' && value !== '')
