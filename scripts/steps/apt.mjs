import { existsSync } from 'node:fs';
import { runProgram } from '../prepare/process.mjs';

/** Whether Debian packages can be installed here without asking anybody. */
export const mayInstallDebianPackages = () => existsSync('/etc/debian_version') && process.getuid?.() === 0;

/**
 * Installs a Debian package; the lists of packages are fetched only where they do not name it yet.
 * @param {string} name
 * @returns {Promise<boolean>} whether it is installed now
 */
export async function installDebianPackage(name) {
  console.log(`Installing the Debian package ${name} (apt-get).`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const install = async (show) => (await runProgram('apt-get', ['install', '-y', '-q', '--no-install-recommends', name], { env, show })).code === 0;
  if (await install(false)) return true;
  if ((await runProgram('apt-get', ['update', '-q'], { env, show: true })).code !== 0) return false;
  return install(true);
}
