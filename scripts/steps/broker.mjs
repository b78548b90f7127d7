import path from 'node:path';
import { Trouble } from '../prepare/trouble.mjs';
import { installDebianPackage, mayInstallDebianPackages } from './apt.mjs';
import { canRun } from './can-run.mjs';

const WHAT_TO_DO = 'install Mosquitto (the Debian package mosquitto), or set OFFPACE_MOSQUITTO to the path of one, and try again';

/**
 * The Mosquitto that the tests of the MQTT adapter start: the one named by OFFPACE_MOSQUITTO, one on the PATH, or Debian's.
 * @param {NodeJS.ProcessEnv} env
 * @returns {string | null} its path; null when there is none
 * @throws {Trouble} when OFFPACE_MOSQUITTO names something that cannot be run
 */
export function brokerHere(env) {
  const named = env.OFFPACE_MOSQUITTO;
  if (named !== undefined && named !== '') {
    if (canRun(named)) return named;
    throw new Trouble(`OFFPACE_MOSQUITTO is "${named}", where there is no program; give the path of a Mosquitto, or unset it.`);
  }
  // Debian puts it where only root's PATH leads.
  const folders = [...(env.PATH ?? '').split(path.delimiter), '/usr/sbin', '/usr/local/sbin'].filter((folder) => folder !== '');
  return folders.map((folder) => path.join(folder, 'mosquitto')).find(canRun) ?? null;
}

/**
 * Finds a Mosquitto, or installs it where that needs nobody's leave.
 * @returns {Promise<string>} its path
 * @throws {Trouble} with what to do, when there is none and none can be installed
 */
export async function findOrInstallBroker() {
  const found = brokerHere(process.env);
  if (found !== null) return found;
  if (!mayInstallDebianPackages() || !(await installDebianPackage('mosquitto'))) throw new Trouble(`There is no Mosquitto here for the tests of the MQTT adapter and none could be installed; ${WHAT_TO_DO}.`);
  const installed = brokerHere(process.env);
  if (installed === null) throw new Trouble(`Mosquitto was installed but cannot be found; ${WHAT_TO_DO}.`);
  return installed;
}
