import type { Command } from 'commander';
import path from 'node:path';
import { Failure } from './failure.ts';
import { askedToStop } from './stop.ts';
import { remark, sayJson } from './talk.ts';

export function addAdapt(program: Command): void {
  program.command('adapt')
    .description('Brings throws from MQTT or from a watched folder to the device door, until Ctrl-C.')
    .argument('<file>', 'describes where the throws come from and which device they are of; docs/adapters.md shows one')
    .option('--json', 'one line of JSON when it ends: how many throws and corrections were stored and refused')
    .addHelpText('after', `
Examples:
  offpace adapt adapter.json`)
    .action(async (file: string, { json }: { readonly json?: true }) => {
      const stop = askedToStop();
      const [{ runAdapter }, { AdapterFailure }] = await Promise.all([import('../adapters/run.ts'), import('../adapters/forward.ts')]);
      const answered = await runAdapter(path.resolve(file), remark, stop).catch((error: unknown) => {
        throw error instanceof AdapterFailure ? new Failure(error.message) : error;
      });
      if (json) sayJson(answered);
    });
}
