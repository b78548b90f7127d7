import { accessSync, constants } from 'node:fs';

/**
 * @param {string} place
 * @returns {boolean} whether there is a program that may be run
 */
export function canRun(place) {
  try {
    accessSync(place, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
