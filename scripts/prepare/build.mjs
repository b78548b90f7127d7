import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fingerprint, readStamp } from './fingerprint.mjs';
import { inRoot, ROOT } from './places.mjs';
import { runScript } from './process.mjs';
import { withProgress } from './progress.mjs';
import { showOutput, Trouble } from './trouble.mjs';

const INPUTS = ['core', 'server', 'device', 'simulators', 'adapters', 'conformance', 'studies', 'command', 'web', 'tsconfig.json', 'tsconfig.build.json', 'vite.config.ts', 'package-lock.json'];
const STAMP = inRoot('dist', '.built');

/** Builds the programs (dist/node) and the screens (dist/web), only when something they are made of has changed. */
export async function buildWhatHasChanged() {
  const wanted = fingerprint(ROOT, INPUTS);
  const whole = existsSync(inRoot('dist', 'node')) && existsSync(inRoot('dist', 'web'));
  if (whole && readStamp(STAMP) === wanted) return;
  mkdirSync(inRoot('dist'), { recursive: true });
  removeLeftovers();
  rmSync(STAMP, { force: true });
  await withProgress('Building', buildBoth);
  writeFileSync(STAMP, `${wanted}\n`);
}

/** What a build that was broken off left behind; the number in its name is the process that made it. */
function removeLeftovers() {
  for (const name of readdirSync(inRoot('dist'))) {
    const maker = /^(?:node|web)-(\d+)$/.exec(name)?.[1];
    if (maker !== undefined && !isAlive(Number(maker))) rmSync(inRoot('dist', name), { recursive: true, force: true });
  }
}

function isAlive(pid) {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return error.code === 'EPERM';
  }
}

async function buildBoth() {
  const parts = await Promise.allSettled([buildPart('node', compile), buildPart('web', bundle)]);
  const failed = parts.find((part) => part.status === 'rejected');
  if (failed !== undefined) throw failed.reason;
}

const compile = (outDir) => runScript(inRoot('node_modules', 'typescript', 'bin', 'tsc'), ['-p', 'tsconfig.build.json', '--outDir', outDir]);
// A test that builds has a NODE_ENV of its own, with which the libraries would come in their slow and heavy form.
const bundle = (outDir) => runScript(inRoot('node_modules', 'vite', 'bin', 'vite.js'), ['build', '--outDir', outDir, '--emptyOutDir', '--logLevel', 'warn'], { env: { ...process.env, NODE_ENV: 'production' } });

/** Builds beside the old part and puts the new one in its place only when it is whole: a broken build leaves the old one standing. */
async function buildPart(name, make) {
  const fresh = inRoot('dist', `${name}-${process.pid}`);
  const { code, output } = await make(fresh);
  if (code !== 0) {
    rmSync(fresh, { recursive: true, force: true });
    showOutput(output);
    throw new Trouble(`The build of dist/${name} failed; the compiler says where above.`);
  }
  const place = inRoot('dist', name);
  rmSync(place, { recursive: true, force: true });
  renameSync(fresh, place);
}
