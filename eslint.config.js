// Typed linting: above all, no promise may be lost, since a lost promise can be a lost record.
import { defineConfig, globalIgnores } from 'eslint/config';
import tseslint from 'typescript-eslint';

export default defineConfig(globalIgnores(['dist', 'node_modules', 'prints', '.pailside', '.astro']), {
  files: ['shared/**/*.ts', 'src/**/*.ts', 'tests/**/*.ts'],
  extends: [tseslint.configs.recommendedTypeChecked],
  languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
  rules: {
    '@typescript-eslint/no-floating-promises': 'error',
    '@typescript-eslint/consistent-type-imports': ['error', { fixStyle: 'inline-type-imports' }],
    '@typescript-eslint/switch-exhaustiveness-check': 'error',
    eqeqeq: 'error',
  },
});
