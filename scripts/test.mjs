// `npm test`. The Node check comes first, so everything that needs a newer Node is loaded after it.
import { demandNode } from './node-version.mjs';

demandNode();
import('./test/run.mjs').then((module) => module.run());
