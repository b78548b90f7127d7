import { collectDefaultMetrics, Counter, Gauge, Histogram, Registry } from 'prom-client';
import type { Fact } from '../core/facts/fact.ts';

/** Where something comes in: a device at its WebSocket, or a screen at its line. */
type Door = 'device' | 'screen';

/** Counts of the running server, for whoever looks after it. They say how much and how fast, never of whom. */
export interface Metrics {
  /** A throw or correction has come. What is returned is called once its `stored` is on the way. */
  frameCame(): () => void;
  refused(door: Door, code: string): void;
  slowed(door: Door): void;
  stored(fact: Fact): void;
  /** How many are connected, asked whenever somebody reads. */
  count(door: Door, connected: () => number): void;
  /** Whether the newest write went to disk. */
  canStore(): boolean;
  /** Everything in the text format of Prometheus, with its content type. */
  read(): Promise<{ readonly type: string; readonly text: string }>;
}

/** Fine below the 50 ms within which a throw should be acknowledged. */
const ACKNOWLEDGED_WITHIN_S = [0.001, 0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.25, 0.5, 1, 2.5];

export function keepMetrics(): Metrics {
  const registry = new Registry();
  const registers = [registry];
  const facts = new Counter({ name: 'offpace_facts_stored_total', help: 'Facts stored since the start.', registers });
  const throws = new Counter({ name: 'offpace_throws_stored_total', help: 'Throws stored since the start, without corrections.', registers });
  const refusals = new Counter({ name: 'offpace_refusals_total', help: 'What was refused since the start, by door and code.', labelNames: ['door', 'code'], registers });
  const acknowledged = new Histogram({ name: 'offpace_acknowledgement_seconds', help: 'From a throw or correction to its answer that it is stored.', buckets: ACKNOWLEDGED_WITHIN_S, registers });
  const slowed = new Counter({ name: 'offpace_slowed_total', help: 'How often a sender was read more slowly for a while, or told to wait, since the start.', labelNames: ['door'], registers });
  let canStore = true;

  return {
    frameCame: () => acknowledged.startTimer(),
    refused(door, code) {
      refusals.inc({ door, code });
      if (code === 'storage-failed') canStore = false;
    },
    slowed: (door) => slowed.inc({ door }),
    stored({ said }) {
      canStore = true;
      facts.inc();
      if (said.kind === 'throw-measured') throws.inc();
    },
    count: (door, connected) => void new Gauge({ name: `offpace_${door}s`, help: `Every ${door} that is connected.`, registers, collect() { this.set(connected()); } }),
    canStore: () => canStore,
    async read() {
      const both = Registry.merge([registry, ofThisProcess()]);
      return { type: both.contentType, text: await both.metrics() };
    },
  };
}

let processRegistry: Registry | null = null;

/** Memory, handles and the lag of the event loop belong to the process, however many servers it starts. */
function ofThisProcess(): Registry {
  if (processRegistry === null) {
    processRegistry = new Registry();
    collectDefaultMetrics({ register: processRegistry });
  }
  return processRegistry;
}
