// The command line out of the sources: `npm start`, `npm run serve` and the other commands of Offpace install and build what has
// changed, then run what `offpace` runs. The Node check comes first, so everything that needs a newer Node is loaded after it.
import { demandNode } from './node-version.mjs';

demandNode();
import('./offpace/run.mjs').then((module) => module.run(process.argv.slice(2)));
