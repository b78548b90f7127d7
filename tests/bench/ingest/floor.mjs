// The floor of ingest: one process that receives over ws, reads JSON, writes each turn's frames in one transaction with
// synchronous FULL, and acknowledges. No hello, no checks, no fold, no viewers: what is left of a server when all of its work is left out.
import Database from 'libsql';
import { createServer } from 'node:http';
import path from 'node:path';
import { WebSocketServer } from 'ws';

const database = new Database(path.join(process.argv[2], 'floor.db'));
database.pragma('locking_mode = EXCLUSIVE');
database.pragma('journal_mode = WAL');
database.pragma('synchronous = FULL');
database.exec('CREATE TABLE throws (entry INTEGER PRIMARY KEY, device TEXT NOT NULL, sequence INTEGER NOT NULL, said TEXT NOT NULL) STRICT');
const insert = database.prepare('INSERT INTO throws (device, sequence, said) VALUES (?, ?, ?)');

let waiting = [];
const batches = [];

function commit() {
  const group = waiting;
  waiting = [];
  database.exec('BEGIN IMMEDIATE');
  for (const { frame, device } of group) insert.run(device, frame.sequence, JSON.stringify(frame));
  database.exec('COMMIT');
  batches.push(group.length);
  for (const { socket, frame } of group) socket.send(JSON.stringify({ kind: 'stored', sequence: frame.sequence }));
}

const http = createServer();
const server = new WebSocketServer({ server: http, perMessageDeflate: false });
let devices = 0;
server.on('connection', (socket) => {
  const device = `eye-${++devices}`;
  socket.on('message', (data) => {
    const frame = JSON.parse(data.toString('utf8'));
    if (frame.kind !== 'throw') return void socket.send(JSON.stringify({ kind: 'welcome' }));
    if (waiting.push({ socket, frame, device }) === 1) setImmediate(commit);
  });
});
process.on('message', () => process.send({ kind: 'batches', batches }, () => process.exit()));
http.listen(0, '127.0.0.1', () => process.send({ kind: 'ready', address: `http://127.0.0.1:${http.address().port}` }));
