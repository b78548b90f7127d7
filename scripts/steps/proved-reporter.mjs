import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { inRoot } from '../prepare/places.mjs';

const PAGE = inRoot('docs', 'prove.md');

/** Writes what the long checks found into docs/prove.md, once all of them have run. */
export class ProvedReporter {
  #said = new Map();
  #vitest = null;

  /** @param {import('vitest/node').Vitest} vitest */
  onInit(vitest) {
    this.#vitest = vitest;
  }

  /** @param {import('vitest').UserConsoleLog} log */
  onUserConsoleLog({ content, taskId, type }) {
    if (type === 'stdout' && taskId !== undefined) this.#said.set(taskId, [...(this.#said.get(taskId) ?? []), content.trim()]);
  }

  /** @param {readonly import('vitest/node').TestModule[]} modules */
  onTestRunEnd(modules) {
    const { filenamePattern, config } = this.#vitest;
    if ((filenamePattern ?? []).length === 0 && config.testNamePattern === undefined) writeFileSync(PAGE, pageOf(modules, this.#said));
  }
}

function pageOf(modules, said) {
  const sorted = [...modules].sort((a, b) => (a.relativeModuleId < b.relativeModuleId ? -1 : 1));
  return `# What the long checks found

\`npm run prove\` runs the long checks whole and writes this page; \`npm test\` runs a small sample of each. Last run on
${new Date().toISOString().slice(0, 10)} under Node ${process.versions.node} on ${cpus().length} cores (${process.platform}).

${sorted.map((module) => `## ${module.relativeModuleId}\n\n${[...module.children.allTests()].map((test) => lineOf(test, said)).join('\n')}\n`).join('\n')}`;
}

function lineOf(test, said) {
  const seconds = ((test.diagnostic()?.duration ?? 0) / 1000).toFixed(0);
  const found = (said.get(test.id) ?? []).flatMap((words) => words.split('\n')).map((line) => `\n  - ${line}`);
  return `- ${test.result().state}, ${seconds} s: ${test.fullName}${found.join('')}`;
}
