import { isBuiltin } from 'node:module';
import { parseSync } from 'oxc-parser';
import { reachesOf } from './reaches.mjs';
import { children } from './tree.mjs';

/**
 * @typedef {{ specifier: string, names: string[], line: number }} Import
 * @typedef {{ imports: Import[], reaches: import('./reaches.mjs').Reach[], errors: string[] }} Source
 */

/**
 * What one TypeScript file imports, in whatever form (static, re-exported, dynamic, in a type), and what it reaches for.
 * @param {string} name its name, for the dialect (.ts, .tsx, .mjs)
 * @param {string} text
 * @returns {Source}
 */
export function readSource(name, text) {
  const { program, errors } = parseSync(name, text);
  const lineOf = (offset) => text.slice(0, offset).split('\n').length;
  const imports = [];
  collectImports(program, (node, source, names) => {
    imports.push({ specifier: plain(source.value), names, line: lineOf(node.start) });
  });
  const reaches = reachesOf(program).map((reach) => ({ ...reach, line: lineOf(reach.start) }));
  return { imports, reaches, errors: errors.map((error) => error.message) };
}

/** `fs` and `node:fs` are the same; `./picture.svg?raw` is the file without the question. */
function plain(specifier) {
  if (isBuiltin(specifier) && !specifier.startsWith('node:')) return `node:${specifier}`;
  return specifier.replace(/\?.*$/, '');
}

function collectImports(node, found) {
  const source = importedBy(node);
  if (source !== null) found(node, source, namesOf(node));
  for (const child of children(node)) collectImports(child, found);
}

function importedBy(node) {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportNamedDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSImportType':
      return literal(node.source ?? node.argument);
    case 'CallExpression':
      return node.callee.type === 'Identifier' && node.callee.name === 'require' ? literal(node.arguments[0]) : null;
    default:
      return null;
  }
}

/** The text of a string literal, also inside a literal type; null for anything computed. */
function literal(node) {
  if (node?.type === 'Literal' && typeof node.value === 'string') return node;
  return node?.type === 'TSLiteralType' ? literal(node.literal) : null;
}

function namesOf(node) {
  return (node.specifiers ?? []).map((specifier) => {
    const name = specifier.imported ?? specifier.local;
    return name.name ?? name.value;
  });
}
