import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { inRoot } from '../prepare/places.mjs';

const PAGE = inRoot('docs', 'prove.md');

/** Writes what the long checks found into docs/prove.md: all of it once all have run, and of a file that was run by itself its own section. */
export class ProvedReporter {
  #said = new Map();
  #vitest = null;
  #page;

  /** @param {string} [page] the file that is written, there before or not */
  constructor(page = PAGE) {
    this.#page = page;
  }

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
    if (config.testNamePattern !== undefined) return;
    const sections = (filenamePattern ?? []).length === 0 ? new Map() : sectionsIn(this.#page);
    for (const module of modules) sections.set(module.relativeModuleId, sectionOf(module, this.#said));
    writeFileSync(this.#page, pageOf(sections));
  }
}

function pageOf(sections) {
  const sorted = [...sections].sort(([a], [b]) => (a < b ? -1 : 1));
  return `# What the long checks found

\`npm run prove\` runs the long checks whole and writes this page; \`npm test\` runs a small sample of each. Of a file that was run by
itself since then its own section is newer: each says when and where it ran.

${sorted.map(([file, section]) => `## ${file}\n\n${section}\n`).join('\n')}`;
}

function sectionsIn(page) {
  const written = existsSync(page) ? readFileSync(page, 'utf8') : '';
  return new Map(written.split(/^## /m).slice(1).map((part) => [part.slice(0, part.indexOf('\n')), part.slice(part.indexOf('\n')).trim()]));
}

function sectionOf(module, said) {
  const ran = `Run on ${new Date().toISOString().slice(0, 10)} under Node ${process.versions.node} on ${cpus().length} cores (${process.platform}).`;
  return [ran, '', ...[...module.children.allTests()].map((test) => lineOf(test, said))].join('\n');
}

function lineOf(test, said) {
  const seconds = ((test.diagnostic()?.duration ?? 0) / 1000).toFixed(0);
  const found = (said.get(test.id) ?? []).flatMap((words) => words.split('\n')).map((line) => `\n  - ${line}`);
  return `- ${test.result().state}, ${seconds} s: ${test.fullName}${found.join('')}`;
}
