import { describe, expect, test } from 'vitest';
import { leadsOn, wantedIn } from '../../web/door/way-on.ts';

const ORIGIN = 'https://192.168.4.20:8080';

describe('The door', () => {
  test.each([
    ['?to=%2Fbench%2Fnorth-1%3Flang%3Des', '/bench/north-1?lang=es'],
    ['', '/'],
    ['?to=https%3A%2F%2Felsewhere.example%2F', '/'],
    ['?to=%2F%2Felsewhere.example%2Fbench', '/'],
    ['?to=%2F%5Celsewhere.example', '/'],
    ['?to=javascript%3Aalert(1)', '/'],
    ['?to=%2Fsign-in', '/'],
  ])('leads from %s to %s, only ever to a screen of this server', (search, wanted) => {
    expect(wantedIn(search, ORIGIN)).toBe(wanted);
  });

  test('leads a phone and a screen to their own screen and never in a circle', () => {
    expect(leadsOn({ kind: 'glance', mound: 'north-1' }, '/glance/north-1?session=s-1')).toBe(true);
    expect(leadsOn({ kind: 'glance', mound: 'north-1' }, '/bench/north-1')).toBe(false);
    expect(leadsOn({ kind: 'viewer', mound: 'north-1' }, '/wall/north-1?kiosk')).toBe(true);
    expect(leadsOn({ kind: 'viewer', mound: 'north-1' }, '/wall/south-2')).toBe(false);
    expect([leadsOn({ kind: 'coach', name: 'Ines Marrow' }, '/playback'), leadsOn({ kind: 'nobody' }, '/')]).toEqual([true, false]);
  });
});
