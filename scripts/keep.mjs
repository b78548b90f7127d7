// `npm run backup` and `npm run restore`. The Node check comes first, so everything that needs a newer Node is loaded after it.
import { demandNode } from './node-version.mjs';

demandNode();
const { buildWhatHasChanged } = await import('./prepare/build.mjs');
const { installWhatIsMissing } = await import('./prepare/install.mjs');
const { inRoot } = await import('./prepare/places.mjs');
const { runScript } = await import('./prepare/process.mjs');
const { withoutStackTraces } = await import('./prepare/trouble.mjs');

await withoutStackTraces(async () => {
  await installWhatIsMissing();
  await buildWhatHasChanged();
  const typed = process.argv.slice(2);
  // A folder that a person names is meant from where they stand; npm changes into the project's folder.
  const data = typed.some((word) => word.startsWith('--data')) ? [] : ['--data', inRoot('data', 'own')];
  const { code } = await runScript(inRoot('dist', 'node', 'server', 'keep.js'), [...typed, ...data], { show: true, cwd: process.env.INIT_CWD });
  process.exitCode = code;
});
