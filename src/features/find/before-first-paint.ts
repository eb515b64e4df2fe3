/**
 * Runs before the page is drawn: who comes with passes has begun already, and on a phone the pictures to start from would
 * push the bed off the screen.
 */
const starts = document.querySelector('.starts')
const isBegun = location.hash.includes('=')
if (isBegun || matchMedia('(max-width: 44.99rem)').matches) starts?.removeAttribute('open')
