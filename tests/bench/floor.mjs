// The least that any program of this kind does: a frame over a bare WebSocket, sent on over socket.io to every screen, drawn as one circle.
import { createServer } from 'node:http';
import { Server } from 'socket.io';
import { WebSocketServer } from 'ws';

const PAGE = `<!doctype html><meta charset="utf-8"><title>floor</title><svg width="800" height="600"></svg>
<script src="/socket.io/socket.io.js"></script>
<script>
  const socket = io({ transports: ['websocket'] });
  socket.on('connect', () => socket.emit('watch', {}));
  socket.on('view', ({ place, x, y }) => {
    const circle = document.createElementNS('http://www.w3.org/2000/svg', 'circle');
    circle.setAttribute('cx', x); circle.setAttribute('cy', y); circle.setAttribute('r', 8); circle.setAttribute('data-place', place);
    document.querySelector('svg').replaceChildren(circle);
  });
</script>`;

const http = createServer((_, response) => response.setHeader('content-type', 'text/html').end(PAGE));
const io = new Server(http, { destroyUpgrade: false });
const devices = new WebSocketServer({ noServer: true });
http.on('upgrade', (request, socket, head) => {
  if (request.url === '/device') devices.handleUpgrade(request, socket, head, (device) => devices.emit('connection', device));
});
io.on('connection', (screen) => screen.on('watch', () => screen.emit('view', { place: 0, x: 0, y: 0 })));
devices.on('connection', (device) => device.on('message', (data) => io.emit('view', JSON.parse(data.toString()))));
http.listen(0, '127.0.0.1', () => process.send(`http://127.0.0.1:${http.address().port}`));
