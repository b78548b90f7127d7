// Loaded into a server before anything else: writes down every connection that is begun from inside, every packet, every name that is looked up.
import dgram from 'node:dgram';
import dns from 'node:dns';
import { syncBuiltinESMExports } from 'node:module';
import net from 'node:net';

const tell = (how, to) => process.stdout.write(`${JSON.stringify({ outbound: how, to })}\n`);
const isName = (host) => typeof host === 'string' && net.isIP(host) === 0 && host !== 'localhost';

/** Puts a look before a function; an address to listen on passes through `lookup` as well, and is no name. */
function before(owner, name, look) {
  const whole = owner[name];
  owner[name] = function watched(...given) {
    look(given);
    return whole.apply(this, given);
  };
}

before(net.Socket.prototype, 'connect', (given) => tell('connect', JSON.stringify(given[0], (_, value) => (typeof value === 'object' && value !== null && 'lookup' in value ? { host: value.host, port: value.port } : value))));
before(dgram.Socket.prototype, 'send', () => tell('packet', ''));
for (const owner of [dns, dns.promises]) {
  for (const name of ['lookup', 'resolve', 'resolve4', 'resolve6', 'reverse']) before(owner, name, ([host]) => isName(host) && tell('name', host));
}
syncBuiltinESMExports();
