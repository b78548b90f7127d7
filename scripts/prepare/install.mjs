import { readFileSync, writeFileSync } from 'node:fs';
import { fingerprint, readStamp } from './fingerprint.mjs';
import { inRoot, ROOT } from './places.mjs';
import { runNpm } from './process.mjs';
import { withProgress } from './progress.mjs';
import { showOutput, Trouble } from './trouble.mjs';

const STAMP = inRoot('node_modules', '.offpace-installed');

/** npm gives its reason first and then its manual. */
const SHOWN_LINES = 12;

/** Installs what package-lock.json asks for, only when that is not what is installed already. */
export async function installWhatIsMissing() {
  const wanted = `${fingerprint(ROOT, ['package-lock.json'])} ${process.platform} ${process.arch}`;
  if (readStamp(STAMP) === wanted) return;
  if (!installedAsLocked()) await withProgress('Installing packages (npm ci)', install);
  writeFileSync(STAMP, `${wanted}\n`);
}

async function install() {
  const { code, output } = await runNpm(['ci', '--no-fund', '--no-audit']);
  if (code === 0) return;
  showOutput(output, SHOWN_LINES);
  throw new Trouble('The packages could not be installed; npm says why above: check the network and the free disk space, then try again.');
}

/** True when npm's own record of what is installed agrees with the lock file, as after an `npm install` by hand. */
function installedAsLocked() {
  const locked = readPackages(inRoot('package-lock.json'));
  const installed = readPackages(inRoot('node_modules', '.package-lock.json'));
  if (locked === null || installed === null) return false;
  return Object.entries(locked).every(([place, entry]) => {
    if (place === '') return true;
    const found = installed[place];
    return found === undefined ? entry.optional === true : found.version === entry.version && found.integrity === entry.integrity;
  });
}

function readPackages(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8')).packages;
  } catch {
    return null;
  }
}
