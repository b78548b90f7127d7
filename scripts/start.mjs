// `npm start` and `npm run serve`. The Node check comes first, so everything that needs a newer Node is loaded after it.
import { demandNode } from './node-version.mjs';

demandNode();
import('./start/run.mjs').then((module) => module.run(process.argv.slice(2)));
