import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ROOT } from '../prepare/places.mjs';
import { endPrograms, runProgram } from '../prepare/process.mjs';
import { Trouble, withoutStackTraces } from '../prepare/trouble.mjs';
import { haveNode } from './have-node.mjs';

/** The oldest Node that package.json admits, and the two long-term lines after it. */
const LINES = ['20.19', '22', '24'];

/** @param {string[]} args the lines to run, all when there are none */
export const run = (args) => withoutStackTraces(() => onEach(args.length === 0 ? LINES : args));

/** Every Node is had before the first suite begins, so that one which is missing is told at once and not after ten minutes. */
async function onEach(lines) {
  process.once('SIGINT', () => {
    endPrograms();
    process.exit(130);
  });
  const nodes = [];
  for (const line of lines) nodes.push(await haveNode(line));
  const results = [];
  for (const node of nodes) results.push({ ...node, ...(await suite(node)) });
  for (const { version, code, seconds } of results) console.log(`Node ${version}: ${code === 0 ? 'passed' : `failed (exit code ${code})`} in ${seconds} s`);
  if (results.some(({ code }) => code !== 0)) throw new Trouble('The suite does not pass on every Node; what failed stands above.');
}

/** What is committed, cloned anew, with packages installed by the Node that is asked. */
async function suite({ program, version }) {
  const folder = mkdtempSync(path.join(tmpdir(), `offpace-node-${version}-`));
  const startedMs = performance.now();
  try {
    console.log(`\n── the suite on Node ${version}`);
    const cloned = await runProgram('git', ['clone', '--quiet', ROOT, folder], { show: true });
    const env = { ...process.env, PATH: `${path.dirname(program)}${path.delimiter}${process.env.PATH}` };
    const { code } = cloned.code === 0 ? await runProgram(program, [path.join('scripts', 'steps.mjs'), 'test'], { cwd: folder, env, show: true }) : cloned;
    return { code, seconds: Math.round((performance.now() - startedMs) / 1000) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
