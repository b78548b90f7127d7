import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's own folder, wherever the command was given. */
export const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** @param {...string} parts below the project's folder */
export const inRoot = (...parts) => path.join(ROOT, ...parts);
