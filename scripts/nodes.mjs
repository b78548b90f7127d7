// `npm run nodes`: the whole suite on a clean clone under every Node that the project promises to run on, one after the other.
import { demandNode } from './node-version.mjs';

demandNode();
import('./nodes/run.mjs').then((module) => module.run(process.argv.slice(2)));
