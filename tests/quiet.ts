import { afterAll, afterEach } from 'vitest';

// A warning fails the test that caused it: nobody reads a warning in a green run.
const said: string[] = [];

for (const level of ['warn', 'error'] as const) {
  console[level] = (...words: unknown[]) => {
    said.push(`console.${level}: ${words.map(String).join(' ')}`);
  };
}
const heard = (warning: Error): void => {
  said.push(`${warning.name}: ${warning.message}`);
};
process.on('warning', heard);
// A process runs many files of tests, and this file once for each.
afterAll(() => void process.off('warning', heard));

afterEach(() => {
  const warnings = said.splice(0);
  if (warnings.length > 0) throw new Error(`A warning fails a test:\n${warnings.join('\n')}`);
});
