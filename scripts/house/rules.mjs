// Who may import what, and why. tests/house/fixtures holds, for every rule here, a small house that breaks it and no other.

/** @typedef {{ id: string, within: string[], except?: string[], packages?: RegExp, places?: string[], onlyPackages?: RegExp, why: string }} ImportRule */

export const ROOMS = ['core', 'server', 'web', 'device', 'simulators', 'adapters', 'conformance', 'studies', 'command'];

/**
 * A file `within` one of the folders and in none of `except` may not import any of `packages` or anything in `places`;
 * with `onlyPackages` it may import no other package.
 * @type {ImportRule[]}
 */
export const IMPORT_RULES = [
  {
    id: 'core-imports-nothing-of-ours',
    within: ['core'],
    places: ['server', 'web', 'device', 'simulators', 'adapters', 'conformance', 'studies', 'command', 'tests', 'scripts'],
    why: 'core is the same in server, browser, simulators and tests, so it can stand on nothing that only one of them has',
  },
  {
    id: 'server-stands-alone',
    within: ['server'],
    places: ['web', 'device', 'simulators', 'adapters', 'studies', 'command', 'tests', 'scripts'],
    why: 'server, web and simulators meet over the wire, never in an import',
  },
  {
    id: 'web-stands-alone',
    within: ['web'],
    places: ['server', 'device', 'simulators', 'adapters', 'studies', 'command', 'tests', 'scripts'],
    why: 'server, web and simulators meet over the wire, never in an import',
  },
  {
    id: 'simulators-stand-alone',
    within: ['simulators'],
    places: ['server', 'web', 'adapters', 'studies', 'command', 'tests', 'scripts'],
    why: 'a simulator that knows the server would not prove the device door; they meet over the wire',
  },
  {
    id: 'device-knows-the-protocol',
    within: ['device'],
    places: ['server', 'web', 'simulators', 'adapters', 'conformance', 'studies', 'command', 'tests', 'scripts'],
    why: 'the half of the protocol that a device keeps is the same for every device, simulated or real, so it can know none of them',
  },
  {
    id: 'adapters-stand-alone',
    within: ['adapters'],
    places: ['server', 'web', 'simulators', 'conformance', 'studies', 'command', 'tests', 'scripts'],
    why: 'an adapter is one more device: it meets the server at the device door, and a room of devices is no part of it',
  },
  {
    id: 'conformance-stands-alone',
    within: ['conformance'],
    places: ['server', 'web', 'device', 'simulators', 'adapters', 'studies', 'command', 'tests', 'scripts'],
    why: 'whoever judges a server or a device by the protocol may know neither, only the protocol',
  },
  {
    id: 'studies-ask-core',
    within: ['studies'],
    places: ['server', 'web', 'device', 'adapters', 'command', 'tests', 'scripts'],
    why: 'a study asks whether the rules in core are right, with simulated throws; how they are served and shown is not its question',
  },
  {
    id: 'command-shows-no-screen',
    within: ['command'],
    places: ['web/live', 'web/desk', 'web/wall', 'web/bench', 'web/glance', 'web/playback', 'web/plan', 'web/start', 'web/charts', 'tests', 'scripts'],
    packages: /^(?:solid-js|d3(?:-.*)?|express|ws)$/,
    why: 'the command line only puts rooms to work and says what came of it; what it needs beyond that belongs in a room',
  },
  {
    id: 'units-stand-at-the-bottom',
    within: ['core/units'],
    places: ['core/facts', 'core/flight', 'core/statistics', 'core/coaching', 'core/session', 'core/imports'],
    why: 'everything is measured in units, so units can depend on nothing else',
  },
  {
    id: 'facts-know-only-units',
    within: ['core/facts'],
    places: ['core/flight', 'core/statistics', 'core/coaching', 'core/session', 'core/imports'],
    why: 'a fact is what was said, whatever is later computed from it',
  },
  {
    id: 'flight-knows-only-units',
    within: ['core/flight'],
    places: ['core/facts', 'core/statistics', 'core/coaching', 'core/session', 'core/imports'],
    why: 'the physics of a ball does not change with the protocol or the coaching',
  },
  {
    id: 'statistics-know-only-units',
    within: ['core/statistics'],
    places: ['core/facts', 'core/flight', 'core/coaching', 'core/session', 'core/imports'],
    why: 'a statistic takes numbers, wherever they come from',
  },
  {
    id: 'coaching-does-not-know-sessions',
    within: ['core/coaching'],
    places: ['core/session', 'core/imports'],
    why: 'the session folds call on coaching; the other way round would be a circle',
  },
  {
    id: 'core-has-no-node',
    within: ['core'],
    packages: /^node:/,
    why: 'core also runs in the browser and does no input or output',
  },
  {
    id: 'core-libraries',
    within: ['core'],
    onlyPackages: /^(?:zod|rxjs|libsql|node:.*|d3.*|solid-js|socket\.io.*)$/,
    why: 'core is pure TypeScript: zod for the shape of facts and rxjs for the folds are all it takes from others',
  },
  {
    id: 'devices-do-not-reach-viewers',
    within: ['server/devices'],
    places: ['server/viewers'],
    why: 'nothing reaches a screen without passing the log',
  },
  {
    id: 'd3-only-in-charts',
    within: ROOMS,
    except: ['web/charts'],
    packages: /^d3(?:-.*)?$/,
    why: 'a drawing is data in, picture out, and all drawings live in web/charts',
  },
  {
    id: 'charts-without-solid',
    within: ['web/charts'],
    packages: /^solid-js$/,
    why: 'a chart must draw the same live, in playback and in a test, with no framework around it',
  },
  {
    id: 'charts-without-a-connection',
    within: ['web/charts'],
    places: ['web/live', 'web/desk', 'web/wall', 'web/bench', 'web/glance', 'web/playback', 'web/plan', 'web/trials', 'web/report', 'web/start'],
    why: 'a chart is given its data; it knows neither where that comes from nor which screen it is on',
  },
  {
    id: 'solid-only-in-web',
    within: ['core', 'server', 'device', 'simulators', 'adapters'],
    packages: /^solid-js$/,
    why: 'only screens need a framework for screens',
  },
  {
    id: 'rxjs-only-in-streams',
    within: ROOMS,
    except: ['core/session', 'server', 'web/live'],
    packages: /^rxjs$/,
    why: 'streams belong where data travels; everywhere else plain functions are easier to read and test',
  },
  {
    id: 'libsql-only-in-log',
    within: ROOMS,
    except: ['server/log'],
    packages: /^libsql$/,
    why: 'there is one way to the disk, the append-only log',
  },
  {
    id: 'mqtt-only-in-its-adapter',
    within: ROOMS,
    except: ['adapters/mqtt.ts'],
    packages: /^mqtt$/,
    why: 'the device door speaks WebSocket; what comes another way is brought there by an adapter',
  },
  {
    id: 'socket-io-only-for-viewers',
    within: ROOMS,
    except: ['server/viewers', 'web/live', 'simulators/coach.ts'], // the simulated coach sits at a tablet, as a person at Bench does
    packages: /^socket\.io(?:-.*)?$/,
    why: 'viewers are served in one place and connect in one place; devices speak plain WebSocket',
  },
];

/** Names from rxjs that look at a clock of their own. */
export const TIMED_STREAMS = new Set(
  'timer interval delay delayWhen debounceTime throttleTime auditTime sampleTime bufferTime windowTime timestamp timeInterval timeout asyncScheduler asapScheduler animationFrameScheduler animationFrames'.split(' '),
);

/** @typedef {{ id: string, within: string[], except?: string[], globals?: string[], members?: string[], bareDate?: boolean, timedStreams?: boolean, why: string }} ReachRule */

/**
 * What code may reach for without importing it. A local variable of the same name is no global.
 * @type {ReachRule[]}
 */
export const REACH_RULES = [
  {
    id: 'core-has-no-clock',
    within: ['core'],
    globals: ['performance', 'setTimeout', 'setInterval', 'setImmediate', 'requestAnimationFrame', 'requestIdleCallback', 'queueMicrotask'],
    members: ['Date.now'],
    bareDate: true,
    timedStreams: true,
    why: 'time comes in as an argument, so that going back means folding again',
  },
  {
    id: 'no-randomness-of-its-own',
    within: ROOMS,
    members: ['Math.random'],
    why: 'randomness comes in as an argument, so that every run can be repeated from its printed seed',
  },
  {
    id: 'core-touches-nothing',
    within: ['core'],
    globals: ['console', 'process', 'document', 'window', 'navigator', 'location', 'localStorage', 'sessionStorage', 'indexedDB', 'fetch', 'WebSocket', 'crypto', 'globalThis', 'self', 'Buffer', 'require'],
    why: 'core has no input, no output and no screen: it is given values and gives values back',
  },
  {
    id: 'server-has-one-clock',
    within: ['server'],
    except: ['server/clock.ts'],
    globals: ['performance'],
    members: ['Date.now', 'process.hrtime', 'process.uptime'],
    bareDate: true,
    why: 'one file in the server reads the clock, so that a test can set it: server/clock.ts',
  },
  {
    id: 'web-has-one-clock',
    within: ['web'],
    except: ['web/live/clock.ts'],
    globals: ['performance'],
    members: ['Date.now'],
    bareDate: true,
    why: 'one file in the web reads the clock, so that a test can set it: web/live/clock.ts',
  },
  {
    id: 'devices-have-one-clock',
    within: ['device', 'simulators', 'adapters'],
    except: ['device/clock.ts'],
    globals: ['performance'],
    members: ['Date.now', 'process.hrtime', 'process.uptime'],
    bareDate: true,
    why: 'what a device does, simulated or not, has to come again at a time that a test can set: device/clock.ts',
  },
];

/** A file with one of these words for a name has no idea of its own. */
export const VAGUE_NAMES = {
  id: 'no-vague-names',
  within: ROOMS,
  words: ['utils', 'util', 'helpers', 'helper', 'common', 'manager', 'service', 'misc'],
  why: 'a file is one idea and has its name',
};

export const CYCLES = { id: 'no-cycles', within: ROOMS, why: 'files in a circle can only be understood, tested and changed all at once' };

export const RULE_IDS = [...IMPORT_RULES, ...REACH_RULES, VAGUE_NAMES, CYCLES].map((rule) => rule.id);
