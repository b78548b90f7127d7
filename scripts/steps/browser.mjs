import { existsSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from '../prepare/places.mjs';
import { runScript } from '../prepare/process.mjs';
import { Trouble } from '../prepare/trouble.mjs';
import { installDebianPackage, mayInstallDebianPackages } from './apt.mjs';
import { canRun } from './can-run.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome'];
const SHELL = 'chromium-headless-shell';
const PLAYWRIGHT = inRoot('node_modules', '@playwright', 'test', 'cli.js');
const WHAT_TO_DO = 'install Chromium, or set OFFPACE_CHROMIUM to the path of one, and try again';

/**
 * The Chromium that browser tests run in: the one named by OFFPACE_CHROMIUM, one on the PATH, Playwright's own; failing all, a new one.
 * @returns {Promise<string>} its path
 * @throws {Trouble} with what to do, when there is none and none can be installed
 */
export async function findOrInstallBrowser() {
  const found = namedBrowser(process.env) ?? browserOnPath(process.env.PATH ?? '') ?? (await playwrightsOwn());
  if (found !== null) return found;
  await install();
  const installed = browserOnPath(process.env.PATH ?? '') ?? (await playwrightsOwn());
  if (installed === null) throw new Trouble(`A browser was installed but cannot be found; ${WHAT_TO_DO}.`);
  return installed;
}

/**
 * Chromium without windows around its pages, which takes half of the time: for tests that ask nothing of those windows.
 * @returns {Promise<string | null>} its path; null where there is none, or where OFFPACE_CHROMIUM names the browser to be used
 */
export async function findOrInstallShell() {
  if (namedBrowser(process.env) !== null) return null;
  const onPath = () => browserOnPath(process.env.PATH ?? '', [SHELL]);
  if (onPath() === null && mayInstallDebianPackages()) await installDebianPackage(SHELL);
  return onPath();
}

/**
 * @param {NodeJS.ProcessEnv} env
 * @returns {string | null} the browser that OFFPACE_CHROMIUM names, or null when it names none
 * @throws {Trouble} when it names something that cannot be run
 */
export function namedBrowser(env) {
  const named = env.OFFPACE_CHROMIUM;
  if (named === undefined || named === '') return null;
  if (canRun(named)) return named;
  throw new Trouble(`OFFPACE_CHROMIUM is "${named}", where there is no program; give the path of a Chromium, or unset it.`);
}

/**
 * @param {string} searchPath as the PATH variable gives it
 * @param {readonly string[]} names
 * @returns {string | null} the first Chromium on it, by the name most likely meant
 */
export function browserOnPath(searchPath, names = NAMES) {
  const folders = searchPath.split(path.delimiter).filter((folder) => folder !== '');
  const places = names.flatMap((name) => folders.map((folder) => path.join(folder, name)));
  return places.find(canRun) ?? null;
}

async function playwrightsOwn() {
  const { chromium } = await import('@playwright/test');
  const own = chromium.executablePath();
  return existsSync(own) ? own : null;
}

async function install() {
  const done = mayInstallDebianPackages() ? await installDebianPackage('chromium') : await installPlaywrightsOwn();
  if (!done) throw new Trouble(`There is no Chromium here and none could be installed; ${WHAT_TO_DO}.`);
}

async function installPlaywrightsOwn() {
  console.log("No Chromium was found: installing Playwright's own (playwright install chromium).");
  return (await runScript(PLAYWRIGHT, ['install', 'chromium'], { show: true })).code === 0;
}
