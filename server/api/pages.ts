import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import express, { Router } from 'express';
import { notTheirs } from '../access/may.ts';
import type { WhoAsks } from '../access/who-asks.ts';
import { refuse } from './refuse.ts';

/** The addresses of screens: one page serves them all and reads from the address which one it is. */
const SCREENS = ['/', '/wall/:mound', '/bench/:mound', '/glance/:mound', '/plan/:mound', '/trials/:athlete', '/playback', '/playback/:session', '/report/:session', '/let-in', '/import'];
/** Screens for whoever comes: a code or a link, a passphrase, what a phone has to accept first; the gallery, which shows nobody's throws, and the icon on a home screen, which shows the way to its own alone. */
const ALWAYS_OPEN = ['/open', '/sign-in', '/certificate', '/gallery', '/glance'];

/** Names the screens that are served: another one means that a page should load itself anew. */
export function buildOf(webFolder: string): string {
  const page = readPage(webFolder);
  return page === null ? 'none' : createHash('sha256').update(page).digest('hex').slice(0, 16);
}

function readPage(webFolder: string): Buffer | null {
  try {
    return readFileSync(path.join(webFolder, 'index.html'));
  } catch {
    return null;
  }
}

/** The screens. What carries a hash in its name never changes; the page that names them is always asked for anew. */
export function pages(webFolder: string, whoAsks: WhoAsks): Router {
  const routes = Router();
  routes.use('/assets', express.static(path.join(webFolder, 'assets'), { immutable: true, maxAge: '1y', index: false, redirect: false }));
  routes.use('/assets', (_, response) => refuse(response, 404, 'unknown-address', '', 'There is no such file; load the page anew.'));
  routes.use(express.static(webFolder, { index: false, redirect: false, setHeaders: (response) => void response.setHeader('Cache-Control', 'no-cache') }));
  routes.get(SCREENS, (request, response, next) => {
    if (notTheirs(whoAsks(request), { kind: 'open', path: request.path.replace(/(?<=.)\/$/, '') }) === null) next();
    else response.redirect(303, `/sign-in?to=${encodeURIComponent(request.originalUrl)}`);
  });
  routes.get([...SCREENS, ...ALWAYS_OPEN], (_, response) => {
    const page = readPage(webFolder);
    if (page === null) return refuse(response, 503, 'no-screens', '', 'The screens are not built; run npm run build.');
    response.set('Cache-Control', 'no-cache').type('html').send(page);
  });
  // Who mistyped an address is shown the ways on; a program gets the answer that it can read.
  routes.get('/{*anywhere}', (request, response, next) => {
    const page = request.accepts(['json', 'html']) === 'html' ? readPage(webFolder) : null;
    if (page === null) return next();
    response.status(404).set('Cache-Control', 'no-cache').type('html').send(page);
  });
  return routes;
}
