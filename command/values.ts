import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import path from 'node:path';
import { wronglyAsked } from './failure.ts';

/** Readers of what was typed behind an option; each throws one sentence about what it cannot use. */
export const wholeNumber = (name: string, smallest: number, largest: number) => (text: string): number => {
  const value = Number(text);
  return /^\d+$/.test(text) && value >= smallest && value <= largest ? value : wronglyAsked(`${name} is "${text}"; give a whole number from ${smallest} to ${largest}.`);
};

/** A number that may have a fraction; `of` says what it counts. */
export const amount = (name: string, of: string, smallest: number, largest: number) => (text: string): number => {
  const value = Number(text);
  return /^\d*\.?\d+$/.test(text) && value >= smallest && value <= largest ? value : wronglyAsked(`${name} is "${text}"; give ${of} from ${smallest} to ${largest}.`);
};

/** Only addresses, no names: a name would be asked for in the network. */
export function address(host: string): string {
  if (host === 'localhost' || isIP(host) !== 0) return host;
  return wronglyAsked(`--host is "${host}"; give 127.0.0.1, localhost or ::1 for this machine alone, 0.0.0.0 for the whole building, or another address of this machine.`);
}

/** A file or folder, from where the command was given. */
export const place = (name: string) => (text: string): string => (text === '' ? wronglyAsked(`${name} is empty; name a file or folder.`) : path.resolve(text));

/** What a device shows at the door, out of the file that the server names. */
export function tokenIn(file: string): string {
  const read = readFileSync(file, 'utf8').trim();
  return read === '' ? wronglyAsked(`The token file ${file} is empty; give the one whose place the server prints.`) : read;
}

/** Of a device door. */
export function doorAddress(text: string): string {
  if (URL.canParse(text) && ['ws:', 'wss:'].includes(new URL(text).protocol)) return text;
  return wronglyAsked(`The address of the device door is "${text}"; give one that begins with ws:// or wss://, such as ws://127.0.0.1:8080/device.`);
}
