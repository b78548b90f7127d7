// What the server must never do, to prove that it would be seen: a connection, a packet and a name, none of which leaves this machine.
import dgram from 'node:dgram';
import { lookup } from 'node:dns';
import { connect, createServer } from 'node:net';

const own = createServer((socket) => socket.end()).listen(0, '127.0.0.1', () => {
  connect(own.address().port, '127.0.0.1', () => {
    const packet = dgram.createSocket('udp4');
    packet.send('x', own.address().port, '127.0.0.1', () => {
      packet.close();
      own.close();
      lookup('offpace.localhost', () => process.send({ kind: 'ready', address: 'none', tokenFile: 'none' }));
    });
  }).resume();
});
