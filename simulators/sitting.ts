import type { SimulatedAthlete } from './athlete.ts';
import { afterThrow, RESTED, type Body } from './body.ts';
import type { Called } from './called.ts';
import { DeviceClient } from '../device/client.ts';
import { deliveryBy } from './delivery.ts';
import { deviceBefore } from './device.ts';
import type { MoundParts } from './mound-parts.ts';
import { randomFrom } from './random.ts';
import { shapeOf } from './repertoire.ts';
import { throwBall } from './throw.ts';

/** One device on the mound and whoever throws before it, until somebody else's turn. */
export interface Sitting {
  readonly client: DeviceClient;
  readonly handedOver: number;
  /** Throws once what was called; says in the log why when there is nothing to send. */
  throwOnce(athlete: SimulatedAthlete, called: Called): void;
  /** Sends what is still held back and resolves once everything is settled, or `withinMs` is over. */
  finish(withinMs: number): Promise<void>;
}

/** `turn` counts the sittings of this start: each has a run of its own and its own chance. */
export function sitDown(athlete: SimulatedAthlete, turn: number, { options, token, name, clock, print }: MoundParts): Sitting {
  const device = deviceBefore(athlete);
  const { device: kind, ...declares } = device.declares;
  const random = (what: string) => randomFrom(options.seed, `${turn}/${athlete.profile.id}/${what}`);
  const chance = { throw: random('throw'), body: random('body'), measure: random('measure') };
  let refused = 0;
  const client = new DeviceClient({
    url: options.url,
    hello: { kind: 'hello', protocol: 1, device: `${kind}.${options.mound}`.slice(0, 64), run: `${name}-${turn + 1}`, mound: options.mound, token, ...declares },
    clock,
    random: random('reconnect'),
    print,
    onSettled: (_, how) => {
      if (how === 'refused') refused += 1;
    },
  });
  const delivery = deliveryBy({ client, faults: options.faults, random: random('faults'), print });
  let body: Body = RESTED;
  let thrower = athlete;

  return {
    client,
    get handedOver() {
      return delivery.handedOver - refused;
    },
    throwOnce(now, called) {
      if (now !== thrower) body = RESTED;
      thrower = now;
      const thrown = throwBall(now, shapeOf(now, called.intent, called.grip), body, called.situation, chance.throw);
      body = afterThrow(body, now, chance.body);
      if (thrown === null) return print(`athlete: cannot throw ${called.situation.distanceM.toFixed(0)} m with this effort`);
      const measured = device.measure(thrown, chance.measure);
      if (measured === null) return print('device: lost the ball');
      delivery.deliver(clock.nowMs(), measured);
      return undefined;
    },
    async finish(withinMs) {
      delivery.finish();
      await new Promise<void>((resolve) => {
        const callOff = clock.after(withinMs, resolve);
        void client.settled().then(() => {
          callOff();
          resolve();
        });
      });
      client.close();
    },
  };
}
