import type { Exposed } from '../server/access/addresses.ts';
import type { ReadAnew } from '../server/catch-up.ts';
import type { RunningServer } from '../server/serve.ts';

const MOUND = 'north-1';

/** Why a server is not ready yet: what was kept of the records cannot be used, after an update for one. */
export function readingLine(so: ReadAnew): string {
  if (so.kind === 'reading') return `Reading the records anew: ${counted(so.facts)} of ${counted(so.of)} facts.`;
  return `Read ${counted(so.facts)} facts of ${so.mounds} ${so.mounds === 1 ? 'mound' : 'mounds'} in ${Math.round(so.tookMs / 1000)} s.`;
}

const counted = (facts: number): string => facts.toLocaleString('en');

/** What a person needs once a server can be used. `mound` says what throws there. */
export function readyLines({ address, tokenFile, exposed }: RunningServer, dataFolder: string, mound: string): string[] {
  return `
Offpace is ready: ${mound}.

  Wall      ${address}/wall/${MOUND}
  Bench     ${address}/bench/${MOUND}
  Glance    ${address}/glance/${MOUND}
  Playback  ${address}/playback

  Throws are kept in ${dataFolder}; on this machine the token for devices is in ${tokenFile}.
${exposed === null ? '  Only this machine reaches it, and whoever sits here is coach.' : whatIsExposed(exposed)}
  Ctrl-C stops everything.
`.split('\n');
}

/** Whoever opens the server to a building shall see what that means. */
function whatIsExposed({ addresses, encrypted, fingerprint }: Exposed): string {
  return `
  Everybody in this network reaches it at ${addresses.join(' and ')}.
  To everybody it shows the door: where coaches sign in by the passphrase${fingerprint === null ? '' : ', and the certificate that phones accept'}.
  Athletes come in by a code that the coach asks for, screens by a link, devices by the token of their mound; each may do that one thing.
  ${encrypted ? `It is encrypted.${fingerprint === null ? '' : ` Phones accept its certificate at /certificate; its fingerprint is\n  ${fingerprint}`}` : 'NOT ENCRYPTED: passphrase and records can be read by others in this network. Start with --tls, or with --cert and --key.'}
`;
}
