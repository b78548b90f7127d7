// Viewers of a mound in a process of their own, as they are in a bullpen: node crowd.mjs <address> <mound> <count>. Says "ready" once all have a first view.
import { io } from 'socket.io-client';

const [address, mound, count] = process.argv.slice(2);
const joined = Array.from({ length: Number(count) }, () => {
  const socket = io(address, { transports: ['websocket'], forceNew: true });
  socket.on('connect', () => socket.emit('watch', { mound, session: null, place: null, log: null }));
  return new Promise((resolve) => socket.once('view', resolve));
});
await Promise.all(joined);
process.send('ready');
