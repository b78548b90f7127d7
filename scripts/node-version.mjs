// Runs before anything else and on a Node that may be years old: nothing newer than ES2015 modules in this file.

/** What package.json's "engines" says, in words. */
const NODE_WANTED = '20.19 or a later 20, or 22.12 or later';

/**
 * Says what is wrong with a Node version, or null when it will do.
 * @param {string} version as `process.versions.node` gives it, for example "20.20.2"
 * @returns {string | null} one sentence that says what to do
 */
export function nodeComplaint(version) {
  const parts = version.split('.').map(Number);
  const major = parts[0];
  const minor = parts[1];
  const enough = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major > 22;
  if (enough) return null;
  return 'Offpace needs Node ' + NODE_WANTED + ', and this is Node ' + version + '; install a newer Node and try again.';
}

/** Ends the process with that sentence and exit code 1 when this Node will not do. */
export function demandNode() {
  const complaint = nodeComplaint(process.versions.node);
  if (complaint === null) return;
  process.stderr.write(complaint + '\n');
  process.exit(1);
}
