import WebSocket from 'ws';

/**
 * A whole device program: it keeps every rule of docs/device-protocol.md, and a test holds it to that. Copy it, and call
 * `thrown` with what you measured. It keeps frames in memory; a device that may lose power writes them, and its run, to disk.
 */
export function openDevice(url, hello, { pauseMs = 500, longestPauseMs = 10_000, answerWithinMs = 10_000, clock = Date.now, say = console.error } = {}) {
  const kept = new Map(); // number → frame as text, until it is answered
  let [sequence, failures, welcomed, over] = [0, 0, false, false];
  let socket, beating, waiting;

  function connect() {
    socket = new WebSocket(url);
    socket.on('open', () => socket.send(JSON.stringify(hello)));
    socket.on('message', (data) => hear(JSON.parse(data)));
    socket.on('error', () => {});
    socket.on('close', (code) => {
      welcomed = false;
      clearInterval(beating);
      clearTimeout(waiting);
      waiting = undefined;
      if (over || code === 4001) return; // 4001: another program stands here under this name
      failures += 1;
      const longer = Math.min(longestPauseMs, pauseMs * 2 ** (failures - 1));
      setTimeout(connect, longer * (0.8 + 0.4 * Math.random())); // not all devices of a building at once
    });
  }

  function hear(frame) {
    if (frame.kind === 'welcome') return greeted(frame);
    if (frame.kind === 'refused') say(`${frame.code} at ${frame.path || 'the frame'}: ${frame.sentence}`);
    if (frame.kind === 'stored' || (frame.final && frame.sequence !== null)) answered(frame.sequence);
    else if (frame.sequence !== null) setTimeout(() => send(frame.sequence), pauseMs);
  }

  function greeted({ settledThrough, gaps, heartbeatSeconds }) {
    welcomed = true;
    failures = 0;
    // The number behind the last gap is settled: it is what made it a gap.
    const highest = gaps.length === 0 ? settledThrough : gaps.at(-1)[1] + 1;
    const isMissing = (number) => number > highest || gaps.some(([first, last]) => number >= first && number <= last);
    for (const number of kept.keys()) if (!isMissing(number)) kept.delete(number);
    const beat = () => socket.send(JSON.stringify({ kind: 'heartbeat', time: clock() }));
    beat(); // before anything that was kept back
    beating = setInterval(beat, heartbeatSeconds * 1000);
    for (const number of [...kept.keys()].sort((a, b) => a - b)) send(number);
  }

  function send(number) {
    if (!welcomed || !kept.has(number)) return;
    socket.send(kept.get(number));
    waiting ??= setTimeout(() => socket.terminate(), answerWithinMs); // nobody is there
  }

  function answered(number) {
    kept.delete(number);
    clearTimeout(waiting);
    waiting = kept.size === 0 ? undefined : setTimeout(() => socket.terminate(), answerWithinMs);
  }

  connect();
  return {
    /** One ball: when it was released on the device's clock, and what was measured of it. */
    thrown(time, body) {
      sequence += 1;
      kept.set(sequence, JSON.stringify({ kind: 'throw', sequence, time, body }));
      send(sequence);
      return sequence;
    },
    close() {
      over = true;
      clearInterval(beating);
      clearTimeout(waiting);
      socket.terminate();
    },
  };
}
