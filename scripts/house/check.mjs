import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { findCycles } from './cycles.mjs';
import { readSource } from './read-source.mjs';
import { CYCLES, IMPORT_RULES, REACH_RULES, ROOMS, TIMED_STREAMS, VAGUE_NAMES } from './rules.mjs';

/**
 * One place where a rule of the house is broken.
 * @typedef {{ rule: string, file: string, line: number, message: string }} Breach
 */

/**
 * Reads every source file of a house and says where its rules are broken.
 * @param {string} root the folder that holds core, server, web, simulators and studies
 * @returns {{ files: number, breaches: Breach[] }} in the order of the files
 */
export function checkHouse(root) {
  const names = ROOMS.flatMap((room) => sourceFiles(root, room));
  const sources = new Map(names.map((name) => [name, readSource(name, readFileSync(path.join(root, name), 'utf8'))]));
  const breaches = [...sources].flatMap(([file, source]) => [
    ...source.errors.map((error) => ({ rule: 'readable', file, line: 1, message: `cannot be read as TypeScript: ${error}` })),
    ...nameBreaches(file),
    ...source.imports.flatMap((one) => importBreaches(file, one)),
    ...source.reaches.flatMap((one) => reachBreaches(file, one)),
  ]);
  return { files: names.length, breaches: [...breaches, ...cycleBreaches(sources)] };
}

function sourceFiles(root, folder) {
  let entries;
  try {
    entries = readdirSync(path.join(root, folder), { withFileTypes: true });
  } catch {
    return [];
  }
  return entries.flatMap((entry) => {
    const name = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return sourceFiles(root, name);
    return /\.(?:[cm]?ts|tsx|[cm]?js|jsx)$/.test(entry.name) ? [name] : [];
  });
}

const isIn = (file, places) => places.some((place) => file === place || file.startsWith(`${place}/`));
const holdsFor = (rule, file) => isIn(file, rule.within) && !isIn(file, rule.except ?? []);

/** The file of ours that an import means, or the package it comes from. */
function target(file, specifier) {
  if (specifier.startsWith('.')) return { place: path.posix.join(path.posix.dirname(file), specifier), package: null };
  const parts = specifier.split('/');
  return { place: null, package: specifier.startsWith('@') ? parts.slice(0, 2).join('/') : specifier.startsWith('node:') ? specifier : parts[0] };
}

function importBreaches(file, { specifier, names, line }) {
  const { place, package: library } = target(file, specifier);
  const broken = IMPORT_RULES.filter((rule) => {
    if (!holdsFor(rule, file)) return false;
    if (place !== null) return isIn(place, rule.places ?? []);
    if (rule.onlyPackages !== undefined) return !rule.onlyPackages.test(library);
    return rule.packages?.test(library) ?? false;
  });
  const breaches = broken.map((rule) => ({ rule: rule.id, file, line, message: `imports ${specifier}: ${rule.why}` }));
  if (library !== 'rxjs') return breaches;
  const timed = names.filter((name) => TIMED_STREAMS.has(name));
  const clocks = REACH_RULES.filter((rule) => rule.timedStreams && holdsFor(rule, file));
  return [...breaches, ...clocks.flatMap((rule) => timed.map((name) => ({ rule: rule.id, file, line, message: `takes ${name} from rxjs: ${rule.why}` })))];
}

function reachBreaches(file, { kind, name, line }) {
  const broken = REACH_RULES.filter((rule) => {
    if (!holdsFor(rule, file)) return false;
    if (kind === 'bare-date') return rule.bareDate ?? false;
    return ((kind === 'global' ? rule.globals : rule.members) ?? []).includes(name);
  });
  return broken.map((rule) => ({ rule: rule.id, file, line, message: `uses ${name}: ${rule.why}` }));
}

function nameBreaches(file) {
  const words = file.replace(/\.\w+$/, '').split(/[/.-]/);
  const vague = words.find((word) => VAGUE_NAMES.words.includes(word));
  return vague === undefined ? [] : [{ rule: VAGUE_NAMES.id, file, line: 1, message: `is called "${vague}": ${VAGUE_NAMES.why}` }];
}

function cycleBreaches(sources) {
  const edges = new Map([...sources].map(([file, { imports }]) => [file, imports.map(({ specifier }) => target(file, specifier).place).filter((place) => sources.has(place))]));
  return findCycles(edges).map((cycle) => ({ rule: CYCLES.id, file: cycle[0], line: 1, message: `imports itself: ${[...cycle, cycle[0]].join(' → ')}: ${CYCLES.why}` }));
}
