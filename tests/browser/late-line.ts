import { once } from 'node:events';
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';
import { pipeline, Transform } from 'node:stream';

const [VERSION, WITHOUT_NAME, CONNECT, IPV4, NAME, REFUSED] = [5, 0, 1, 1, 3, 5];

/**
 * A line on which everything comes late, both ways and in order: a SOCKS proxy without names (RFC 1928). What a test does beside it, as a
 * device or another coach, is there before what its page says: a test that does not wait for its page is red.
 * @param lateMs how much later each piece comes at the other end
 * @returns where a browser finds it, until this process ends
 */
export async function lateLine(lateMs: number): Promise<string> {
  const server = createServer({ noDelay: true, allowHalfOpen: true }, (near) => {
    near.on('error', () => near.destroy());
    void carry(near, lateMs).catch(() => near.destroy());
  });
  server.listen(0, '127.0.0.1').unref();
  await once(server, 'listening');
  return `socks5://127.0.0.1:${(server.address() as AddressInfo).port}`;
}

/** Each of the two messages of a browser comes in one piece on a line within one machine. */
async function carry(near: Socket, lateMs: number): Promise<void> {
  await once(near, 'data');
  near.write(Buffer.from([VERSION!, WITHOUT_NAME!]));
  const [asked] = (await once(near, 'data')) as [Buffer];
  near.pause();
  const host = hostIn(asked);
  if (asked[1] !== CONNECT || host === null) return void near.end(answer(REFUSED!));
  const far = connect({ host, port: asked.readUInt16BE(asked.length - 2), noDelay: true, allowHalfOpen: true });
  far.on('error', () => near.destroy());
  await once(far, 'connect');
  near.write(answer(0));
  pipeline(near, late(lateMs), far, () => {});
  pipeline(far, late(lateMs), near, () => {});
}

function hostIn(asked: Buffer): string | null {
  if (asked[3] === IPV4) return [...asked.subarray(4, 8)].join('.');
  return asked[3] === NAME ? asked.subarray(5, 5 + asked[4]!).toString() : null;
}

const answer = (code: number): Buffer => Buffer.from([VERSION!, code, 0, IPV4!, 0, 0, 0, 0, 0, 0]);

function late(lateMs: number): Transform {
  return new Transform({
    transform(piece, _encoding, done) {
      setTimeout(() => this.push(piece), lateMs);
      done();
    },
    flush(done) {
      setTimeout(done, lateMs);
    },
  });
}
