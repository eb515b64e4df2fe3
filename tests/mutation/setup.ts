import fc from 'fast-check'

/** The same made-up cases for every mutant, or which of them live would be chance. */
fc.configureGlobal({ seed: 24 })
