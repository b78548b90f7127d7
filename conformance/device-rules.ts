/** The rules of the protocol for devices, in the order of the report. */
export const DEVICE_RULES = {
  'hello-first': 'The first frame of every connection is a hello with the token and the mound that the device was given.',
  'same-run': 'After a reconnect the hello names the same device and the same run.',
  'heartbeat-first': 'A heartbeat follows each welcome before anything else.',
  'heartbeats': 'While a connection is open heartbeats come in the rhythm of the welcome.',
  'frames-of-the-protocol': 'Every frame is one JSON text message as the schemas have it.',
  'numbers-rise': 'Each new throw or correction has a higher number than all before it.',
  'same-content': 'A number that is sent again is the same frame again.',
  'tries-again': 'What was refused with "final": false is sent again.',
  'forgets-what-is-refused': 'What was refused with "final": true never comes again, also not after a reconnect.',
  'sends-again': 'What had no answer when the connection broke is sent again once the welcome shows that it is missing.',
  'believes-the-welcome': 'What the welcome says is settled is not sent again, also where its answer was lost.',
  'fills-gaps': 'Of the numbers in a gap of the welcome each is sent again, and those above the gap are not.',
  'stays-away': 'A device whose connection is closed with code 4001 does not connect again.',
} as const;

export type DeviceRule = keyof typeof DEVICE_RULES;
