#!/usr/bin/env node
// What a package that holds the built programs puts on the PATH. The Node check comes first, as everywhere.
import { demandNode } from '../scripts/node-version.mjs';

demandNode();
import('../dist/node/command/main.js');
