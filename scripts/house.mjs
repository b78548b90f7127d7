// Holds the import directions, the bans and the circles; `node scripts/house.mjs`, also a step of `npm test`.
import { checkHouse } from './house/check.mjs';
import { ROOT } from './prepare/places.mjs';

const { files, breaches } = checkHouse(ROOT);
for (const { rule, file, line, message } of breaches) console.error(`${file}:${line} ${message} [${rule}]`);
if (breaches.length > 0) {
  console.error(`The house check found ${breaches.length} ${breaches.length === 1 ? 'breach' : 'breaches'} in ${files} files.`);
  process.exitCode = 1;
} else {
  console.log(`The house check read ${files} files and found its rules kept.`);
}
