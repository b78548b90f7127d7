import { defineConfig } from '@playwright/test';
import everyDay from './playwright.config.ts';
import { lateLine } from './tests/browser/late-line.ts';

const LATE_MS = 120;

// The runner draws the line; its workers read this file again and find it there.
process.env['OFFPACE_LATE_LINE'] ??= await lateLine(LATE_MS);

// Every test of `npm test` once more, with pages that hear and are heard late: what a test does not wait for, it does not find.
export default defineConfig({ ...everyDay, use: { ...everyDay.use, proxy: { server: process.env['OFFPACE_LATE_LINE'], bypass: '<-loopback>' } } });
