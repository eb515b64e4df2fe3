// The core alone: the site tweens plain numbers, never styles. Its types are in the whole package's.
/// <reference types="gsap" />
export { gsap } from 'gsap/gsap-core'
