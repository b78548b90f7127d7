import { children } from './tree.mjs';

/**
 * Something used that was not handed in: a global (`console`), a member of one (`Date.now`), or the present time (`new Date()`).
 * @typedef {{ kind: 'global' | 'member' | 'bare-date', name: string, start: number }} Reach
 */

const VALUES_AMONG_TYPES = new Set(['TSAsExpression', 'TSNonNullExpression', 'TSSatisfiesExpression', 'TSTypeAssertion', 'TSInstantiationExpression']);

/**
 * @param {any} program the syntax tree of one file
 * @returns {Reach[]}
 */
export function reachesOf(program) {
  const found = [];
  visit(program, [], found);
  return found;
}

function visit(node, scopes, found) {
  if (node.type.startsWith('TS') && !VALUES_AMONG_TYPES.has(node.type)) return;
  const own = declaredBy(node);
  const inner = own.size > 0 ? [...scopes, own] : scopes;
  const isGlobal = (name) => !inner.some((scope) => scope.has(name));
  if (node.type === 'Identifier' && isGlobal(node.name)) found.push({ kind: 'global', name: node.name, start: node.start });
  if (node.type === 'MemberExpression') noteMember(node, isGlobal, found);
  if (isBareDate(node) && isGlobal('Date')) found.push({ kind: 'bare-date', name: 'new Date()', start: node.start });
  for (const child of children(node)) {
    if (!isOnlyAName(node, child)) visit(child, inner, found);
  }
}

function noteMember(node, isGlobal, found) {
  const property = node.computed ? node.property.value : node.property.name;
  if (node.object.type === 'Identifier' && isGlobal(node.object.name) && typeof property === 'string') {
    found.push({ kind: 'member', name: `${node.object.name}.${property}`, start: node.start });
  }
}

/** `new Date()` and `Date()` read the clock; `new Date(ms)` does not. */
function isBareDate(node) {
  const called = node.type === 'NewExpression' || node.type === 'CallExpression';
  if (!called || node.callee.type !== 'Identifier' || node.callee.name !== 'Date') return false;
  return node.type === 'CallExpression' || node.arguments.length === 0;
}

/** In `a.window`, `{ window: 1 }` and `window:` the word is a name, not the global. */
function isOnlyAName(parent, child) {
  switch (parent.type) {
    case 'MemberExpression':
      return child === parent.property && !parent.computed;
    case 'Property':
    case 'MethodDefinition':
    case 'PropertyDefinition':
      return child === parent.key && !parent.computed;
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'LabeledStatement':
    case 'BreakStatement':
    case 'ContinueStatement':
      return child.type !== 'BlockStatement' && !child.type.endsWith('Statement');
    case 'ExportNamedDeclaration':
      return parent.source !== null && child.type === 'ExportSpecifier';
    case 'ExportSpecifier':
      return child === parent.exported;
    default:
      return false;
  }
}

/** The names that a node brings into being for what stands inside it. */
function declaredBy(node) {
  const names = new Set();
  switch (node.type) {
    case 'Program':
    case 'BlockStatement':
    case 'StaticBlock':
      for (const statement of node.body) addStatement(statement, names);
      break;
    case 'SwitchStatement':
      for (const branch of node.cases) for (const statement of branch.consequent) addStatement(statement, names);
      break;
    case 'FunctionDeclaration':
    case 'FunctionExpression':
    case 'ArrowFunctionExpression':
      for (const parameter of node.params) addPattern(parameter, names);
      if (node.id) addPattern(node.id, names);
      break;
    case 'ForStatement':
      if (node.init) addStatement(node.init, names);
      break;
    case 'ForOfStatement':
    case 'ForInStatement':
      addStatement(node.left, names);
      break;
    case 'CatchClause':
      if (node.param) addPattern(node.param, names);
      break;
    case 'ClassExpression':
      if (node.id) addPattern(node.id, names);
      break;
    default:
  }
  return names;
}

function addStatement(statement, names) {
  switch (statement.type) {
    case 'VariableDeclaration':
      for (const declarator of statement.declarations) addPattern(declarator.id, names);
      break;
    case 'FunctionDeclaration':
    case 'ClassDeclaration':
      if (statement.id) addPattern(statement.id, names);
      break;
    case 'ExportNamedDeclaration':
    case 'ExportDefaultDeclaration':
      if (statement.declaration) addStatement(statement.declaration, names);
      break;
    case 'ImportDeclaration':
      addImported(statement, names);
      break;
    default:
  }
}

/** What Node's own modules hand out (`performance` of node:perf_hooks) is the global under another coat. */
function addImported(statement, names) {
  if (statement.source.value.startsWith('node:')) return;
  for (const specifier of statement.specifiers) addPattern(specifier.local, names);
}

function addPattern(pattern, names) {
  switch (pattern.type) {
    case 'Identifier':
      names.add(pattern.name);
      break;
    case 'ObjectPattern':
      for (const property of pattern.properties) addPattern(property.value ?? property.argument, names);
      break;
    case 'ArrayPattern':
      for (const element of pattern.elements) if (element) addPattern(element, names);
      break;
    case 'AssignmentPattern':
      addPattern(pattern.left, names);
      break;
    case 'RestElement':
      addPattern(pattern.argument, names);
      break;
    default:
  }
}
