import { afterEach } from 'vitest';

// A warning fails the test that caused it: nobody reads a warning in a green run.
const said: string[] = [];

for (const level of ['warn', 'error'] as const) {
  console[level] = (...words: unknown[]) => {
    said.push(`console.${level}: ${words.map(String).join(' ')}`);
  };
}
process.on('warning', (warning) => {
  said.push(`${warning.name}: ${warning.message}`);
});

afterEach(() => {
  const warnings = said.splice(0);
  if (warnings.length > 0) throw new Error(`A warning fails a test:\n${warnings.join('\n')}`);
});
