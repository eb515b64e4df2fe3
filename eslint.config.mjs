import astro from 'eslint-plugin-astro'
import { defineConfig } from 'eslint/config'
import ts from 'typescript-eslint'
import { roomRules } from './src/setup/rooms.mjs'

const onlyNamed = 'Import d3’s functions by name: its namespace brings all of it to the page.'

export default defineConfig(
  { ignores: ['dist', 'node_modules', '.tools', '.astro', '.results', '.mutation'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  // What needs types is in .oxlintrc.json, which looks at them in a fifth of the time.
  ts.configs.strict,
  astro.configs.recommended,
  {
    rules: {
      eqeqeq: 'error',
      'no-restricted-syntax': [
        'error',
        { selector: 'ImportDeclaration[source.value=/^d3/] > ImportNamespaceSpecifier', message: onlyNamed },
        { selector: 'ImportDeclaration[source.value=/^d3/] > ImportDefaultSpecifier', message: onlyNamed },
        { selector: 'ImportExpression[source.value=/^d3/]', message: onlyNamed },
      ],
      '@typescript-eslint/consistent-type-imports': 'error',
      // Numbered rows and needles are looked up all the time, in places where they are known to be there.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  roomRules,
  {
    files: ['tests/**/*.ts'],
    // The set-up has Node read what opens a browser as it is.
    ignores: ['tests/smoke/webkit.ts'],
    rules: {
      '@typescript-eslint/no-restricted-imports': [
        'error',
        {
          paths: [{ name: 'vitest', importNames: ['it'], message: 'Every test here is a test(…).' }],
          patterns: [{ group: ['**/../src/*', '**/../src/**'], message: 'Import what is tested by @/….' }],
        },
      ],
    },
  },
)
