import { runAsProgram } from './run.ts';

await runAsProgram(process.argv.slice(2), process.cwd());
