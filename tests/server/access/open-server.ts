import { keepPassphrase } from '../../../server/access/passphrase.ts';
import { ScreenClient } from '../screen-client.ts';
import { folderForTest } from '../folder.ts';
import { serverForTest, type TestServer } from '../running.ts';
import type { ServerOptions } from '../../../server/serve.ts';

const PASSPHRASE = 'four quiet words at dusk';

/** A server that the whole building reaches. Its passphrase is kept with a small cost: every guess would take a third of a second. */
export async function openServer(more: Partial<ServerOptions> = {}): Promise<TestServer> {
  const dataFolder = more.dataFolder ?? folderForTest();
  if (more.dataFolder === undefined) await keepPassphrase(dataFolder, PASSPHRASE, '00112233445566778899aabbccddeeff', 16);
  return serverForTest({ host: '0.0.0.0', webFolder: dataFolder, ...more, dataFolder });
}

export interface Answer {
  readonly status: number;
  readonly body: Record<string, unknown>;
  readonly headers: Headers;
}

/** One browser: it keeps its cookies, and opens screens with them. */
export class Browser {
  readonly #server: TestServer;
  #cookies = new Map<string, string>();

  constructor(server: TestServer) {
    this.#server = server;
  }

  get cookie(): string {
    return [...this.#cookies].map(([name, value]) => `${name}=${value}`).join('; ');
  }

  async ask(method: string, address: string, body?: unknown, headers: Record<string, string> = {}): Promise<Answer> {
    const response = await fetch(`${this.#server.address}${address}`, {
      method,
      redirect: 'manual',
      headers: { cookie: this.cookie, ...(body === undefined ? {} : { 'content-type': 'application/json' }), ...headers },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    for (const set of response.headers.getSetCookie()) {
      const [, name, value] = /^([^=]+)=([^;]*)/.exec(set)!;
      if (value === '') this.#cookies.delete(name!);
      else this.#cookies.set(name!, value!);
    }
    const text = await response.text();
    return { status: response.status, headers: response.headers, body: text.startsWith('{') || text.startsWith('[') ? (JSON.parse(text) as Record<string, unknown>) : { text } };
  }

  /** A screen of this browser. */
  screen(auth: Record<string, unknown> = {}): ScreenClient {
    return new ScreenClient(this.#server, auth, { cookie: this.cookie });
  }
}

/** A browser whose coach has signed in. */
export async function coachAt(server: TestServer, name = 'Ines Marrow'): Promise<Browser> {
  const browser = new Browser(server);
  const { status } = await browser.ask('POST', '/api/sign-in', { name, passphrase: PASSPHRASE });
  if (status !== 200) throw new Error(`The coach was not let in: ${status}.`);
  return browser;
}

/** The phone of the athlete of a session, let in by a code that a coach asked for. */
export async function phoneOf(server: TestServer, coach: Browser, session: string): Promise<Browser> {
  const { body } = await coach.ask('POST', `/api/sessions/${session}/glance-code`);
  const phone = new Browser(server);
  await phone.ask('POST', '/api/open', { secret: body['code'] });
  return phone;
}
