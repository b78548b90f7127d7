import type { Athlete } from '../core/facts/coach.ts';
import { ASKED, type Asked } from './wall/asked/asked.ts';

/** What Playback can show beside its picture, one at a time: the numbers of the throw, notes and bookmarks, its high-speed video. */
export const PANELS = ['numbers', 'notes', 'video'] as const;
export type Panel = (typeof PANELS)[number];
export const THEMES = ['light', 'dark', 'sun'] as const;
export type Theme = (typeof THEMES)[number];
/** The hand whose thumb taps. */
export const SIDES = ['left', 'right'] as const;

/** What a viewer may ask for in the address. An absent or unreadable setting is null: the screen then decides. */
export interface Settings {
  readonly language: 'en' | 'es' | null;
  readonly units: Athlete['units'] | null;
  readonly theme: Theme | null;
  readonly hand: (typeof SIDES)[number] | null;
  /** Of a big screen, in inches, and how far away it is read, in metres. */
  readonly diagonalIn: number | null;
  readonly distanceM: number | null;
  readonly windows: boolean;
  /** What Playback shows beside its picture. */
  readonly panel: Panel | null;
  /** The one that a Glance belongs to; otherwise whoever has the mound is followed. */
  readonly session: string | null;
  /** The picture shown beside the separation plane. */
  readonly picture: Asked | null;
}

/** Reads the settings of a query string: lang, units, theme, hand, diagonal, distance, windows, panel, session, picture. */
export function settingsIn(search: string): Settings {
  const query = new URLSearchParams(search);
  return {
    language: oneOf(query.get('lang'), ['en', 'es']),
    units: oneOf(query.get('units'), ['imperial', 'metric']),
    theme: oneOf(query.get('theme'), THEMES),
    hand: oneOf(query.get('hand'), SIDES),
    diagonalIn: between(query.get('diagonal'), 3, 300),
    distanceM: between(query.get('distance'), 0.2, 60),
    windows: query.get('windows') === '1',
    panel: oneOf(query.get('panel'), PANELS),
    session: query.get('session'),
    picture: oneOf(query.get('picture'), ASKED),
  };
}

/** The same query with one setting changed, or without it. */
export function withSetting(search: string, name: string, value: string | null): string {
  const query = new URLSearchParams(search);
  if (value === null) query.delete(name);
  else query.set(name, value);
  const text = query.toString();
  return text === '' ? '' : `?${text}`;
}

/** The choice that a text names, or null. */
export function oneOf<T extends string>(value: string | null, choices: readonly T[]): T | null {
  return choices.find((choice) => choice === value) ?? null;
}

/** The number that a text gives where it lies in a range, or null. */
export function between(value: string | null, low: number, high: number): number | null {
  const number = value === null || value === '' ? Number.NaN : Number(value);
  return number >= low && number <= high ? number : null;
}
