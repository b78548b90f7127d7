import { expect, test } from 'vitest';
import { notTheirs, type Deed } from '../../../server/access/may.ts';
import { NOBODY, speakingAs, type Who } from '../../../server/access/who.ts';

const WHO = {
  coach: { kind: 'coach', name: 'Ines Marrow' },
  athlete: { kind: 'athlete' },
  viewer: { kind: 'viewer', mound: 'north-1' },
  glance: { kind: 'glance', mound: 'north-1', session: 's-1' },
  nobody: NOBODY,
} as const satisfies Record<string, Who>;

const from = 'glance';
const DEEDS: Readonly<Record<string, Deed>> = {
  'open the Wall of its mound': { kind: 'open', path: '/wall/north-1' },
  'open the Wall of another': { kind: 'open', path: '/wall/south-2' },
  'open Glance of its mound': { kind: 'open', path: '/glance/north-1' },
  'open Bench': { kind: 'open', path: '/bench/north-1' },
  'ask for lists': { kind: 'ask' },
  'follow who has the mound': { kind: 'watch', mound: 'north-1', session: null },
  'follow its session': { kind: 'watch', mound: 'north-1', session: 's-1' },
  'follow another session': { kind: 'watch', mound: 'north-1', session: 's-2' },
  'follow another mound': { kind: 'watch', mound: 'south-2', session: null },
  'say comfort': { kind: 'say', mound: 'north-1', says: { kind: 'comfort-said', session: 's-1', from, comfortable: true } },
  'say comfort of another session': { kind: 'say', mound: 'north-1', says: { kind: 'comfort-said', session: 's-2', from, comfortable: true } },
  'say comfort on another mound': { kind: 'say', mound: 'south-2', says: { kind: 'comfort-said', session: 's-1', from, comfortable: true } },
  'write a note': { kind: 'say', mound: 'north-1', says: { kind: 'note-written', session: 's-1', text: 'fine', place: null } },
  'take a move of throws back': { kind: 'say', mound: 'north-1', says: { kind: 'throws-moved', places: [2], session: null, from: 's-1' } },
  'claim throws': { kind: 'say', mound: 'north-1', says: { kind: 'throws-moved', places: [2], session: null } },
};

/** The whole table: who may do which of these. What is not named here is refused. */
const MAY: Readonly<Record<keyof typeof WHO, readonly string[]>> = {
  coach: Object.keys(DEEDS).filter((deed) => !deed.startsWith('say comfort')),
  athlete: Object.keys(DEEDS).filter((deed) => !['write a note', 'take a move of throws back', 'claim throws'].includes(deed)),
  viewer: ['open the Wall of its mound', 'follow who has the mound'],
  glance: ['open Glance of its mound', 'follow its session', 'say comfort'],
  nobody: [],
};

test.each(Object.keys(WHO) as (keyof typeof WHO)[])('what a %s may do is what the table says, and nothing else', (who) => {
  const may = Object.keys(DEEDS).filter((deed) => notTheirs(WHO[who], DEEDS[deed]!) === null);
  expect(may).toEqual(MAY[who]);
});

test('every refusal is a code and a sentence', () => {
  const refusals = Object.values(WHO).flatMap((who) => Object.values(DEEDS).flatMap((deed) => notTheirs(who, deed) ?? []));
  expect(refusals.length).toBeGreaterThan(30);
  expect(refusals.filter(({ code, sentence }) => !code.startsWith('not-') || !/^[A-Z].*\.$/.test(sentence))).toEqual([]);
});

test('what a screen says of itself gives up rights and never gains any', () => {
  expect(speakingAs(WHO.coach, 'athlete')).toEqual(WHO.athlete);
  for (const who of [WHO.viewer, WHO.glance, WHO.nobody]) expect(speakingAs(who, 'coach')).toEqual(who);
});
