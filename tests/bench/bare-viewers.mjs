import { createServer } from 'node:http';
import process from 'node:process';
import { Server } from 'socket.io';

/** The floor under the views: socket.io and nothing else. A word from a device goes to all who have joined its mound, as long as a view is. */
const http = createServer();
const io = new Server(http, { serveClient: false });
let view = {};
io.on('connection', (socket) => {
  socket.on('watch', ({ mound }) => {
    void socket.join(mound);
    socket.emit('view', view);
  });
  socket.on('throw', (mound) => io.to(mound).emit('view', view));
});
process.on('message', (given) => {
  view = given;
  http.listen(0, '127.0.0.1', () => process.send({ address: `http://127.0.0.1:${http.address().port}` }));
});
process.on('disconnect', () => process.exit(0));
