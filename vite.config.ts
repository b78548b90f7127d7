import { createHash } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin, type Rolldown } from 'vite';
import solid from 'vite-plugin-solid';

const inWeb = (file: string): string => fileURLToPath(new URL(`web/${file}`, import.meta.url));
const PAGE = inWeb('index.html');
const WORKER = inWeb('glance/kept/worker.ts');
const GLANCE = inWeb('glance/glance.tsx');
const MY_GLANCE = inWeb('glance/my-glance.tsx');

// The screens: one page for all of them, the address says which. No inline script, so the server can forbid those.
export default defineConfig({
  root: inWeb(''),
  publicDir: 'public',
  plugins: [solid(), glanceParts()],
  build: {
    outDir: '../dist/web',
    emptyOutDir: true,
    target: 'es2023',
    sourcemap: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1000,
    // Which files each screen loads: tests/bench weighs them.
    manifest: true,
    rolldownOptions: {
      input: { index: PAGE, 'glance-worker': WORKER },
      // A worker has one address for ever: a browser asks there for the next.
      output: { entryFileNames: ({ facadeModuleId }) => (facadeModuleId === WORKER ? '[name].js' : 'assets/[name]-[hash].js') },
    },
  },
});

/** Writes into the worker of Glance what Glance is made of: the page, its scripts, those that it fetches later too, styles and letters. */
function glanceParts(): Plugin {
  return {
    name: 'glance-parts',
    // After chunks that are styles alone have been thrown away: they are no parts any more.
    enforce: 'post',
    generateBundle(_, bundle) {
      const chunks = Object.values(bundle).filter((one) => one.type === 'chunk');
      const worker = chunks.find(({ facadeModuleId }) => facadeModuleId === WORKER);
      if (worker === undefined) this.error('There is no worker to write into.');
      const first = chunks.filter(({ facadeModuleId }) => facadeModuleId !== null && [PAGE, GLANCE, MY_GLANCE].includes(facadeModuleId));
      const later = first.filter(({ facadeModuleId }) => facadeModuleId === GLANCE).flatMap(({ dynamicImports }) => chunksNamed(dynamicImports, bundle));
      const scripts = needed([...first, ...later], bundle);
      const assets = scripts.flatMap(({ viteMetadata }) => [...(viteMetadata?.importedCss ?? []), ...(viteMetadata?.importedAssets ?? [])]);
      const parts = ['/index.html', ...[...new Set([...scripts.map(({ fileName }) => fileName), ...assets])].sort().map((file) => `/${file}`)];
      worker.code = worker.code.replaceAll('GLANCE_PARTS', JSON.stringify(parts)).replaceAll('GLANCE_BUILD', JSON.stringify(createHash('sha256').update(parts.join()).digest('hex').slice(0, 16)));
    },
  };
}

/** Chunks and all that they import at once. */
function needed(first: readonly Rolldown.OutputChunk[], bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] {
  const found = new Set(first);
  for (const chunk of found) for (const imported of chunksNamed(chunk.imports, bundle)) found.add(imported);
  return [...found];
}

function chunksNamed(files: readonly string[], bundle: Rolldown.OutputBundle): Rolldown.OutputChunk[] {
  return files.map((file) => bundle[file]).filter((one) => one?.type === 'chunk');
}
