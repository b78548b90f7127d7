import { expect, test } from 'vitest';
import { haveNode, isOfLine } from '../../scripts/nodes/have-node.mjs';

const [major = '', minor = ''] = process.versions.node.split('.');

test('a Node belongs to a line when its first numbers are those of the line', () => {
  expect(isOfLine('v20.19.6', '20.19')).toBe(true);
  expect(isOfLine('v20.2.0', '20')).toBe(true);
  expect(isOfLine('v20.2.0', '20.20')).toBe(false);
  expect(isOfLine('v220.1.0', '22')).toBe(false);
});

test('the Node that somebody names is taken when it is of the line', async () => {
  const found = await haveNode(`${major}.${minor}`, { [`OFFPACE_NODE_${major}_${minor}`]: process.execPath });
  expect(found).toEqual({ program: process.execPath, version: process.version });
});

test('a Node of another line, and a program that is none, are refused with what to set', async () => {
  await expect(haveNode('8', { OFFPACE_NODE_8: process.execPath })).rejects.toThrow(`is Node ${process.version}, and Node 8 is wanted; set OFFPACE_NODE_8`);
  await expect(haveNode('22', { OFFPACE_NODE_22: '/nowhere/node' })).rejects.toThrow('/nowhere/node cannot be started as Node 22');
});
