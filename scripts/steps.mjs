// `npm test` and the other commands that run steps: lint, build, prove, bench, screens, schemas.
// The Node check comes first, so everything that needs a newer Node is loaded after it.
import { demandNode } from './node-version.mjs';

demandNode();
import('./steps/run.mjs').then((module) => module.run(process.argv[2] || 'test'));
